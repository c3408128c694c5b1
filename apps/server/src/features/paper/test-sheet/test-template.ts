import { PRELUDE } from '../../sheets/typesetting/prelude.ts';

/** Layout of the test sheet, in Typst. */
export const TEST_TEMPLATE = `${PRELUDE}
#let d = input
#let t = l.testSheet
#set text(size: 9pt)
#set par(leading: 0.5em, spacing: 0.6em)
#set list(marker: [–])
#set table(inset: (x: 4pt, y: 3.2pt))
#set page(
  paper: "a4", margin: (x: 12mm, top: 11mm, bottom: 13mm),
  footer: context grid(columns: (1fr, auto), small(d.number + " · " + d.version), small(page-of(counter(page).get().first(), counter(page).final().first()))),
)
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

#grid(columns: (1fr, 22mm), column-gutter: 4mm, align: (start + top, end + top),
  {
    text(size: if d.number.clusters().len() > 26 { 14pt } else { 24pt }, weight: 700, d.number)
    linebreak()
    text(size: 11pt, weight: 600, t.title + " · " + d.head)
    linebreak()
    small(d.version)
  },
  drawing(d.qr, width: 21mm),
)
#line(length: 100%, stroke: 1.4pt)
#if d.banner != none { banner(d.banner.heading, d.banner.text) }
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
