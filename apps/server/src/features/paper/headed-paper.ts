/**
 * A4 about one thing of the plant, in Typst: its name in large with the QR code of its page, and at the foot of each page
 * its name, its version and which page it is. A document shows itself so: `#show: headed-paper.with(name, title)`.
 */
export const HEADED_PAPER = `
#let headed-paper(name, title, body) = {
  set text(size: 9pt)
  set par(leading: 0.5em, spacing: 0.6em)
  set list(marker: [–])
  set table(inset: (x: 4pt, y: 3.2pt))
  set page(
    paper: "a4", margin: (x: 12mm, top: 11mm, bottom: 13mm),
    footer: context grid(columns: (1fr, auto), small(name + " · " + input.version), small(page-of(counter(page).get().first(), counter(page).final().first()))),
  )
  let letters = name.clusters().len()
  grid(columns: (1fr, 22mm), column-gutter: 4mm, align: (start + top, end + top),
    {
      text(size: if letters > 34 { 14pt } else if letters > 26 { 20pt } else { 24pt }, weight: 700, name)
      linebreak()
      text(size: 11pt, weight: 600, title + " · " + input.head)
      linebreak()
      small(input.version)
    },
    drawing(input.qr, width: 21mm),
  )
  line(length: 100%, stroke: 1.4pt)
  if input.banner != none { banner(input.banner.heading, input.banner.text) }
  body
}
`;
