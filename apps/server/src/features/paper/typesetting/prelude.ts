/**
 * What every document begins with, in Typst: the data, the date of the record instead of the clock's, the shipped fonts,
 * the direction of the language, and parts that several share. Every word comes with the data (`labels`).
 * Black on white and line widths only: nothing is told by colour.
 */
export const PRELUDE = `
#let input = json(bytes(sys.inputs.data))
#let l = input.labels
#let rtl-page = input.direction == "rtl"
#let stamp = input.date
#set document(
  title: input.title,
  author: l.product,
  date: datetime(year: stamp.at(0), month: stamp.at(1), day: stamp.at(2), hour: stamp.at(3), minute: stamp.at(4), second: stamp.at(5)),
)
#set text(
  font: ("Atkinson Hyperlegible Next", "Noto Sans Arabic", "Noto Sans Devanagari"),
  lang: input.language, dir: if rtl-page { rtl } else { ltr }, number-width: "tabular", hyphenate: false,
)
// A word longer than its column breaks rather than leaves the paper.
#show regex("[^\\s\u{200b}]{22}"): it => it + sym.zws
// Spanish and Portuguese say a hyphen again on the next line; a tag has only its own, so what holds a hyphen is set as
// English is. The other languages get a pattern that nothing meets.
#let repeats-hyphen = input.language in ("es", "pt")
#show regex(if repeats-hyphen { "\\S*-\\S*" } else { "[^\\s\\S]" }): set text(lang: "en")
#set table(stroke: 0.5pt + black)

#let grey = luma(35%)
#let small(words) = text(size: 7.4pt, fill: grey, words)
#let drawing(svg, ..size) = image(bytes(svg), format: "svg", ..size)
#let blank-line(width) = box(width: width, height: 9pt, stroke: (bottom: 0.5pt + black))
#let bold-cell(it) = text(weight: 700, it)
#let head-cell(it) = table.cell(fill: luma(88%), text(size: 7.6pt, weight: 600, it))
#let heading-line(words, size: 11pt, above: 10pt, below: 5pt) = block(above: above, below: below, sticky: true, text(size: size, weight: 700, words))
#let tick = box(width: 7.5pt, height: 7.5pt, stroke: 0.7pt + black, baseline: 0.5pt)
// Boxes to tick are drawn: no font of ours has them.
#let ticked(words) = words.split("☐").join(tick)
// Drawn as well: which way to read.
#let arrow = box(baseline: -1.5pt, {
  box(width: 12pt, height: 5pt, {
    place(horizon, line(length: 9pt, stroke: 1.2pt))
    place(end + horizon, polygon(fill: black, (0pt, 0pt), (5pt, 2.5pt), (0pt, 5pt)))
  })
})
// Numbers of bolts run from left to right in every language, as they stand on the plan.
#let left-to-right(it) = box({
  set text(dir: ltr)
  if rtl-page { arrow; h(5pt) }
  it
})
#let page-of(page, pages) = l.page.replace("{page}", str(page)).replace("{pages}", str(pages))
#let banner(heading, words) = block(width: 100%, stroke: 2pt + black, inset: 0pt, below: 4pt, breakable: false, stack(
  block(width: 100%, fill: black, inset: (x: 6pt, y: 4pt), text(fill: white, size: 12pt, weight: 700, heading)),
  if words != "" { block(inset: (x: 6pt, y: 4pt), text(size: 9.4pt, weight: 600, words)) },
))
`;
