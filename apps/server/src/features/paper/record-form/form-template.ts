import { PRELUDE } from '../typesetting/prelude.ts';

/** Layout of the record form, in Typst: one page a joint, boxes large enough for a pen in a glove. */
export const FORM_TEMPLATE = `${PRELUDE}
#set text(size: 8.6pt)
#set par(leading: 0.42em, spacing: 0.5em)
#set table(inset: (x: 3.5pt, y: 2.6pt))
#let f = l.form
#let box-height = 7mm

#let part(title, done) = heading-line(title + if done { "  –  " + f.recorded } else { "" }, size: 10.5pt, above: 7pt, below: 3.5pt)
// One line of boxes: a label above the room to write.
#let boxes(columns, ..cells) = table(
  columns: columns, rows: 10.4mm, align: start + top,
  ..cells.pos().map(c => { text(size: 6.8pt, fill: grey, c.at(0)); if c.len() > 1 { linebreak(); ticked(c.at(1)) } }),
)
#let who = ((f.name,), (f.time,), (f.signature,))

#let opening(d) = {
  part(f.opening, d.done.opening)
  if d.done.opening { return }
  boxes((1fr, 1fr), ..l.zeroEnergy.map(c => (c,)))
  v(-0.5pt)
  boxes((28mm, 32mm, 1fr, 32mm, 42mm), (f.permit,), (f.covered, f.yesNo), ..who)
}

#let faces(d) = {
  part(f.faces, d.done.faces)
  if d.done.faces { return }
  table(
    columns: (14mm, 1fr, 24mm, 32mm), rows: (auto,) + (box-height,) * d.faces, align: start + horizon,
    table.header(..(f.face, f.condition, f.flatness, f.accepted).map(head-cell)),
    ..range(d.faces).map(i => (
      box({ set text(dir: ltr); str(i + 1) + " / " + str(d.faces) }), f.conditions.map(c => box[#tick #c]).join(h(7pt)), [], ticked(f.yesNo),
    )).flatten(),
  )
  v(-0.5pt)
  boxes((34mm, 32mm, 1fr, 32mm, 42mm), (f.bolting, f.boltingCondition), (f.accepted, f.yesNo), ..who)
}

#let nipping-up(d) = {
  part(f.nippingUp, d.done.nippedUp)
  if d.done.nippedUp { return }
  boxes((1fr, 34mm, 36mm, 20mm), (f.family + ": " + d.gasketWanted,), (f.size,), (f.batch,), (f.count,))
  v(-0.5pt)
  boxes((36mm, 22mm, 1fr), (f.grade,), (f.bolts + ": " + d.studs,), (f.lubricant,))
  v(-0.5pt)
  boxes((1fr,) * d.readings.len(), ..d.readings.map(r => (r.name + if r.limit != "" { "; " + l.limits + ": " + r.limit } else { "" },)))
  v(-0.5pt)
  boxes((1fr,) * 4, ..d.gaps.map(g => (g,)))
  v(-0.5pt)
  boxes((1fr, 40mm, 50mm), ..who)
}

#let passes(d) = {
  part(f.passes, false)
  for s in d.order { block(above: 1pt, below: 3pt, grid(columns: (30mm, 1fr), text(weight: 700, s.heading), {
    let steps = s.fours.map(x => box(x)).join([#h(3pt)#text(weight: 700)[/] #h(1pt)])
    if s.numbers { left-to-right(steps) } else { steps }
  })) }
  table(
    columns: (17mm, 18mm, 20mm, 17mm, 19mm, 15mm, 15mm, 24mm, 1fr), rows: (auto,) + (9.4mm,) * d.passes.len(), align: start + horizon,
    table.header(..(f.pass, f.wanted, f.set, f.tool, f.gauge, f.start, f.end, f.outcomeTitle, f.persons).map(head-cell)),
    ..d.passes.map(p => (bold-cell(p.name), bold-cell(p.wanted), [], [], [], [], [], text(size: 6.6pt, ticked(f.outcome)), [])).flatten(),
  )
  v(-0.5pt)
  boxes((24mm, 44mm, 1fr, 32mm, 42mm), (f.finalRound + ": " + f.rounds,), (f.nutMoved, f.yesNo), ..who)
  v(3pt)
  block(width: 100%, stroke: 1.4pt + black, inset: 4pt, breakable: false, { text(weight: 700, f.partTight); v(8mm) })
}

#let form(d, index) = {
  let last-place = label("form-" + str(index))
  set page(
    paper: "a4", margin: (x: 12mm, top: 10mm, bottom: 12mm),
    footer: context grid(columns: (1fr, auto), small(d.tag + " · " + d.version), small(page-of(counter(page).get().first(), counter(page).at(last-place).first()))),
  )
  counter(page).update(1)
  grid(columns: (1fr, 20mm), column-gutter: 4mm, align: (start + top, end + top),
    {
      text(size: if d.tag.clusters().len() > 30 { 13pt } else { 20pt }, weight: 700, d.tag)
      linebreak()
      text(size: 9.6pt, weight: 600, f.title + " · " + d.head)
      linebreak()
      text(weight: 600, d.looked.join(" · "))
      linebreak()
      text(size: 8pt, f.how)
    },
    drawing(d.qr, width: 20mm),
  )
  line(length: 100%, stroke: 1.2pt)
  for b in d.banners { banner(b.heading, b.text) }
  block(above: 4pt, below: 2pt, text(size: 7.6pt, text(weight: 700, l.safety.title + ": ") + (l.safety.lines + d.cautions).join(" ")))
  block(above: 4pt, below: 2pt, text(size: 7.6pt, text(weight: 700, l.stop.heading + ": ") + l.stopText))
  opening(d)
  faces(d)
  nipping-up(d)
  passes(d)
  v(4pt)
  boxes((1fr, 40mm, 50mm), (f.entered,), (f.time,), (f.signature,))
  [#metadata(none)#last-place]
}

#set page(paper: "a4")
#for (index, d) in input.forms.enumerate() {
  if index > 0 { pagebreak(weak: true) }
  form(d, index)
}
`;
