import { PRELUDE } from '../typesetting/prelude.ts';

/**
 * Layout of tags and labels, in Typst. A tag says which joint this is and opens its page; where the joint stands is for
 * the screen to say, so no tag has a colour or a sign of a stage.
 */
export const TAGS_TEMPLATE = `${PRELUDE}
#let g = input.geometry
#set page(paper: "a4", margin: (x: g.marginX_mm * 1mm, y: g.marginY_mm * 1mm))
#set text(size: 8pt)
#set par(leading: 0.42em, spacing: 0.5em)
#let w = g.width_mm * 1mm
#let h = g.height_mm * 1mm
#let tag-size(d, most) = if d.tag.clusters().len() > 34 { most * 0.45 } else if d.tag.clusters().len() > 20 { most * 0.65 } else { most }
#let warned(d) = if d.warning != none { block(width: 100%, fill: black, inset: (x: 4pt, y: 3pt), above: 3pt, below: 3pt, text(fill: white, weight: 700, d.warning)) }
#let cut = line(length: 100%, stroke: (paint: black, thickness: 0.7pt, dash: "dashed"))

#let stub(d, step) = block(width: 100%, height: 15mm, inset: (x: 4mm, y: 1.6mm), grid(
  columns: (auto, 1fr), rows: (auto, 1fr), row-gutter: 2pt, column-gutter: 3mm, align: (start + top, end + top),
  text(size: 10.5pt, weight: 700, step), text(size: calc.max(6.2pt, tag-size(d, 8.5pt)), weight: 600, d.tag),
  align(bottom, small(l.tags.stubName + " ") + blank-line(26mm)), align(bottom + end, small(l.tags.stubTime + " ") + blank-line(20mm)),
))

#let card(d) = block(width: w, height: h, stroke: 0.7pt + black, radius: 2mm, clip: true, stack(
  block(width: 100%, height: h - d.stubs.len() * 15mm - d.stubs.len() * 1pt, inset: (x: 4mm, y: 3mm), clip: true, {
    // The hole for the tie, with a ring as strong as a flange.
    place(top + center, circle(radius: 2.6mm, stroke: 1.2pt + black))
    v(7mm)
    text(size: tag-size(d, 17pt), weight: 700, d.tag)
    linebreak()
    text(weight: 600, d.kind + " · " + d.flange)
    warned(d)
    v(1pt)
    grid(
      columns: (1fr, 27mm), column-gutter: 3mm,
      {
        text(size: 9.5pt, weight: 700, d.studs)
        linebreak()
        d.gasket
        for p in d.looked { linebreak(); text(weight: 600, p) }
        for p in d.where { linebreak(); text(size: 7.4pt, p) }
      },
      drawing(d.qr, width: 27mm),
    )
    place(bottom, block(width: 100%, small(l.tags.stop + linebreak() + l.tags.stub + ".")))
  }),
  ..d.stubs.map(s => (cut, stub(d, s))).flatten(),
))

#let label(d) = {
  let code = calc.min(h - 3mm, w * 0.42, 32mm)
  block(width: w, height: h, inset: 1.5mm, clip: true, grid(
    columns: (code, 1fr), column-gutter: 2mm, align: horizon,
    drawing(d.qr, width: code),
    {
      set text(size: 7pt)
      text(size: tag-size(d, if h > 30mm { 13pt } else { 10.5pt }), weight: 700, d.tag)
      linebreak()
      d.flange
      linebreak()
      text(weight: 600, d.studs)
      if d.warning != none { linebreak(); text(weight: 700, d.warning) }
      if h > 30mm { for p in d.looked { linebreak(); p } ; if d.where.len() > 0 { linebreak(); d.where.last() } }
    },
  ))
}

#let cells = range(g.first - 1).map(_ => []) + input.tags.map(d => if g.stubs { card(d) } else { label(d) })
#for (index, sheet) in cells.chunks(g.columns * g.rows).enumerate() {
  if index > 0 { pagebreak() }
  // Labels are counted from the left in every language, as they lie on their sheet.
  set text(dir: ltr)
  grid(
    columns: (w,) * g.columns, rows: (h,) * g.rows, column-gutter: g.gapX_mm * 1mm, row-gutter: g.gapY_mm * 1mm,
    ..sheet.map(it => { set text(dir: if rtl-page { rtl } else { ltr }); it }),
  )
}
`;
