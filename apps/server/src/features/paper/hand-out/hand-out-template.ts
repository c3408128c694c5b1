import { PRELUDE } from '../typesetting/prelude.ts';

/** Layout of the pre-job hand-out, in Typst: large print, read in a circle of people. No word is written here. */
export const HAND_OUT_TEMPLATE = `${PRELUDE}
#let d = input
#set text(size: 13pt)
#set par(leading: 0.55em, spacing: 0.8em)
#set list(spacing: 8pt, marker: [–])
#set table(inset: (x: 5pt, y: 4pt))
#set page(
  paper: "a4",
  margin: (x: 16mm, top: 14mm, bottom: 15mm),
  footer: context {
    let pages = counter(page).final().first()
    set text(size: 9pt)
    grid(columns: (1fr, auto), d.heading, page-of(counter(page).get().first(), pages))
  },
)
#let heading-line = heading-line.with(size: 17pt, above: 15pt, below: 8pt)

#text(size: 13pt, l.handOut.title + " · " + d.site)
#v(-4pt)
#text(size: 24pt, weight: 700, d.heading)
#v(-4pt)
#d.appliesTo
#line(length: 100%, stroke: 1.4pt)
#if d.banner != none { banner(d.banner.heading, d.banner.text) }

#heading-line(l.handOut.viewing)
#l.handOut.viewingText

#heading-line(l.handOut.numbering)
#text(weight: 600, d.numbering)
#align(center, {
  if d.planSvg == none { block(stroke: 1pt, inset: 8pt, d.plan.missing) } else { image(bytes(d.planSvg), format: "svg", width: 120mm) }
  block(above: 4pt, text(size: 11pt, d.planTag + ". " + d.plan.notes.join(" ")))
})

#heading-line(l.handOut.passes)
#text(weight: 600, d.how)
#for p in d.passes { block(above: 7pt, below: 7pt, text(size: 15pt, weight: 600, p)) }

#if d.lines.len() > 0 {
  heading-line(d.orderTitle)
  for s in d.lines {
    block(above: 7pt, below: 7pt, grid(
      columns: (40mm, 1fr), text(weight: 700, s.heading),
      {
        let steps = s.fours.map(f => box(f)).join([#h(5pt)#text(weight: 700)[/] #h(1pt)])
        if s.numbers { left-to-right(steps) } else { steps }
      },
    ))
  }
  if d.notes.len() > 0 { text(size: 11pt, d.notes.join(" ")) }
}

#if d.skipped != none {
  block(breakable: false, {
    heading-line(l.handOut.skipped)
    for (svg, line) in ((d.skippedSvgs.skipped, d.skipped.once), (d.skippedSvgs.kept, d.skipped.kept)) {
      block(above: 7pt, below: 3pt, text(weight: 700, line))
      image(bytes(svg), format: "svg", width: 150mm, alt: line)
    }
    if d.skipped.even != none { text(size: 11pt, weight: 600, d.skipped.even) }
    block(above: 5pt, text(size: 10pt, d.skipped.caveat))
  })
}

#heading-line(l.handOut.lubricant)
#text(weight: 600, d.lubricant)

#heading-line(l.handOut.cautions)
#if d.cautions.len() > 0 { list(..d.cautions.map(c => text(weight: 700, c))) }
#list(..l.safety.lines)
#text(size: 11pt, l.safety.defers)

#heading-line(l.handOut.attendance)
#grid(columns: (1fr, 1fr), column-gutter: 8mm,
  [#l.handOut.heldBy #box(width: 1fr, stroke: (bottom: 0.5pt))], [#l.handOut.date #box(width: 1fr, stroke: (bottom: 0.5pt))])
#v(6pt)
#table(
  columns: (10mm, 1fr, 48mm, 48mm),
  rows: (auto,) + (9.5mm,) * 14,
  align: start + horizon,
  table.header(..("", l.handOut.name, l.handOut.company, l.handOut.signature).map(h => table.cell(fill: luma(88%), text(size: 11pt, weight: 600, h)))),
  ..range(14).map(i => (text(size: 10pt, str(i + 1)), [], [], [])).flatten(),
)
`;
