import { HEADED_PAPER } from '../headed-paper.ts';
import { PRELUDE } from '../typesetting/prelude.ts';

/** Layout of the test sheet, in Typst. */
export const TEST_TEMPLATE = `${PRELUDE}${HEADED_PAPER}
#let d = input
#let t = l.testSheet
#let facts(rows) = grid(
  columns: (30mm, 1fr), row-gutter: 5pt, column-gutter: 4pt,
  ..rows.map(r => (
    text(size: 8.2pt, fill: grey, r.label),
    {
      if r.at("strong", default: false) { text(size: 10.2pt, weight: 700, r.value) } else { r.value }
      if r.at("write", default: false) { if r.value != "" { linebreak(); v(1pt) }; blank-line(100%) }
    },
  )).flatten(),
)
#let listed(columns, heads, rows) = table(
  columns: columns, align: start + horizon,
  table.header(..heads.map(head-cell)), ..rows.map(r => r.map(ticked)).flatten(),
)

#show: headed-paper.with(d.number, t.title)
#v(3pt)
#grid(columns: (1fr, 1fr), column-gutter: 8mm,
  { heading-line(t.test, above: 4pt); facts(d.test) },
  { heading-line(t.release, above: 4pt); facts(d.release); v(4pt); facts(d.exclusion) },
)
#block(width: 100%, stroke: 0.8pt + black, inset: 6pt, above: 10pt, breakable: false, {
  set list(spacing: 3.4pt, marker: [–])
  block(below: 4pt, text(size: 11pt, weight: 700, l.safety.title))
  let all = t.cautions.map(c => text(weight: 600, c)) + l.safety.lines
  let half = calc.ceil(all.len() / 2)
  grid(columns: (1fr, 1fr), column-gutter: 5mm, ..all.chunks(half).map(c => list(..c)))
  block(above: 5pt, small(l.safety.defers))
})
#if d.stoppers.len() > 0 { heading-line(t.stoppers); list(..d.stoppers) }
#heading-line(t.gauges)
#{
  let blanks = calc.max(0, 2 - d.gauges.len())
  listed((1fr, 1fr, 1fr, 1fr, 1fr), (t.gauge, t.range, t.calibrated, t.validThrough, t.certificate), d.gauges + range(blanks).map(_ => ("", "", "", "", " ")))
}
#heading-line(t.blinds)
#if d.blinds.len() == 0 { t.noBlinds } else { listed((1fr, 1fr, 1fr, 1fr, 1.4fr, 1fr), (t.blind, t.kind, t.rating, t.thickness, t.joint, t.where), d.blinds) }
#heading-line(t.readings)
#table(
  columns: (30mm, 25mm, 17mm, 17mm, 26mm, 1fr, 30mm), align: start + horizon, rows: (auto,) + (8mm,) * (d.readings.len() + 8),
  table.header(..(t.readAt, t.read, t.temperature, t.held, t.readGauge, t.name, t.signature).map(head-cell)),
  ..d.readings.flatten(), ..range(8 * 7).map(_ => []),
)
#for group in d.joints {
  heading-line(group.role + " (" + str(group.rows.len()) + ")")
  listed((1.6fr, 1fr, 1fr, 38mm), (t.tag, t.size, t.stage, t.result), group.rows)
}
`;
