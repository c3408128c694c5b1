import { PRELUDE } from '../typesetting/prelude.ts';

/** Layout of the progress report, in Typst: one page, black on white. */
export const REPORT_TEMPLATE = `${PRELUDE}
#let d = input
#let t = l.report
#set text(size: 9pt)
#set par(leading: 0.5em, spacing: 0.6em)
#set table(inset: (x: 3.5pt, y: 3.2pt))
#set page(
  paper: "a4", margin: (x: 12mm, top: 11mm, bottom: 12mm),
  footer: grid(columns: (1fr, auto), column-gutter: 6mm, small(t.same), small(d.asOf)),
)
#grid(columns: (1fr, 20mm), column-gutter: 4mm, align: (start + top, end + top),
  {
    text(size: 18pt, weight: 700, t.title)
    block(above: 7pt, below: 0pt, text(size: 10.5pt, weight: 600, d.head + " · " + d.asOf))
    for h in d.headlines { block(above: 5pt, below: 0pt, text(size: 11.5pt, weight: 700, h)) }
  },
  drawing(d.qr, width: 19mm),
)
#line(length: 100%, stroke: 1.4pt)
#heading-line(t.byArea, above: 6pt)
#{
  set text(size: 8.4pt)
  let last = d.areas.len() + 1
  table(
    columns: (1fr,) + (13.8mm,) * d.columns.len(), inset: (x: 2pt, y: 5pt),
    align: (x, y) => (if x == 0 { start } else { end }) + horizon,
    stroke: (x, y) => (bottom: if y == 0 or y == last - 1 { 1pt + black } else { 0.4pt + black }),
    table.header(text(weight: 600, t.area), ..d.columns.map(c => text(size: 7.2pt, weight: 600, hyphenate: true, c))),
    ..d.areas.map(a => (a.name, ..a.figures.map(f => if f == 0 { text(fill: grey, "0") } else { str(f) }))).flatten(),
    ..(text(weight: 700, d.sum.name), ..d.sum.figures.map(f => text(weight: 700, str(f)))),
  )
}
#heading-line(t.curve)
#drawing(d.curveSvg, width: 100%)
#v(-3pt)
#let swatch(dash, thick) = box(baseline: -2.5pt, line(length: 11mm, stroke: (paint: black, thickness: thick, dash: dash)))
#text(size: 8pt, [#swatch("solid", 2.2pt) #t.curveActual #h(6mm) #swatch("dashed", 1pt) #t.curvePlan #h(6mm) #swatch("dotted", 0.8pt) #t.curveToday])
#if d.finish != none { linebreak(); text(size: 8.8pt, d.finish) }
#if d.unplanned != none { linebreak(); small(d.unplanned) }
#v(2pt)
#grid(columns: (1fr, 1fr), column-gutter: 8mm,
  { heading-line(t.before, above: 4pt); set list(spacing: 4pt, marker: [–]); list(..d.before)
    heading-line(t.people)
    if d.people.len() == 0 { t.noPeople } else { list(..d.people) }
  },
  {
    heading-line(t.signOffs, above: 4pt)
    if d.signOffs.len() == 0 { "0" } else {
      table(
        columns: (1fr, 1fr, 16mm), align: (x, y) => if x == 2 { end } else { start }, stroke: (bottom: 0.4pt + black),
        ..d.signOffs.map(s => (s.what, s.by, bold-cell(str(s.count)))).flatten(),
      )
    }
  },
)
`;
