import { PRELUDE } from '../typesetting/prelude.ts';

/**
 * Layout of the joint sheet, in Typst. Every word comes with the data (`labels`, `sheets`), none is written here.
 * Black on white and line widths only: nothing is told by colour.
 */
export const SHEET_TEMPLATE = `${PRELUDE}
#set text(size: 9pt)
#set par(leading: 0.5em, spacing: 0.6em)
#set table(inset: (x: 4pt, y: 3.4pt))

#let section(s) = block(width: 100%, breakable: true, above: 0pt, below: 9pt, {
  block(width: 100%, below: 4.5pt, inset: (bottom: 2.5pt), stroke: (bottom: 0.8pt + black), text(size: 11pt, weight: 700, s.title))
  grid(
    columns: (20mm, 1fr), row-gutter: 4.6pt, column-gutter: 4pt,
    ..s.rows.map(r => (
      text(size: 8.2pt, fill: grey, r.label),
      {
        if r.at("strong", default: false) { text(size: 10.6pt, weight: 700, r.value) } else { r.value }
        if r.at("write", default: false) { if r.value != "" { linebreak() }; blank-line(100%) }
      },
    )).flatten(),
  )
})

#let header(d) = {
  grid(
    columns: (14mm, 1fr, 23mm), column-gutter: 4mm, align: (center + horizon, start + horizon, end + top),
    drawing(d.glyph, width: 13mm),
    {
      text(size: if d.tag.clusters().len() > 26 { 14pt } else { 24pt }, weight: 700, d.tag)
      linebreak()
      text(size: 10.5pt, weight: 600, d.kind + " · " + d.stageWord)
      linebreak()
      text(size: 8.6pt, l.title + " · " + d.place)
      linebreak()
      small(d.version + if d.recorded != "" { " · " + d.recorded })
    },
    drawing(d.qr, width: 22mm),
  )
  line(length: 100%, stroke: 1.4pt)
}

#let plan-caption(p) = {
  set align(center)
  set par(leading: 0.45em)
  if p.viewedFrom != none { text(size: 11pt, weight: 700, p.viewedFrom); linebreak() }
  if p.bolt1At != none { text(size: 11pt, weight: 700, p.bolt1At); linebreak() }
  for q in p.ask { text(weight: 700, q); linebreak(); blank-line(80%); linebreak() }
  small(p.notes.join(" "))
}

#let plan-block(d, width) = {
  if d.planSvg == none { block(width: 100%, stroke: 1pt, inset: 8pt, text(weight: 700, d.plan.missing)) }
  else { align(center, drawing(d.planSvg, width: width)) }
  block(width: 100%, above: 4pt, below: 10pt, plan-caption(d.plan))
}

#let passes(d) = {
  heading-line(l.passes.title)
  let pump = d.showsPump
  table(
    columns: (23mm, 10mm, 21mm, 21mm) + if pump { (1fr,) } else { () } + (22mm, if pump { 27mm } else { 1fr }, if pump { 20mm } else { 1fr }),
    rows: (auto,) + (8.6mm,) * d.passes.len(),
    align: (x, y) => (if y > 0 and x > 0 and x < 4 { end } else { start }) + horizon,
    table.header(..((l.passes.pass, l.passes.percent, ..d.setUnits) + if pump { (l.passes.pump + ", " + l.passes.pumpUnit,) } else { () } + (l.passes.tool, l.passes.time, l.passes.initials)).map(head-cell)),
    ..d.passes.map(p => (
      bold-cell(p.name), p.percent, text(size: 14pt, weight: 700, p.torque_Nm), text(size: 11pt, weight: 600, p.torque_ftlbf),
    ) + if pump { (text(size: 8pt, p.pump),) } else { () } + ([], [], [])).flatten(),
  )
  for n in d.passNotes { block(above: 3pt, below: 3pt, n) }
}

// Steps as numbers run from left to right in every language; a sentence runs as its language does.
#let in-order(s, it) = if s.at("numbers", default: true) { left-to-right(it) } else { it }
#let sequence(d) = if d.sequence.lines.len() > 0 {
  heading-line(l.sequence.title)
  for s in d.sequence.lines {
    block(above: 4pt, below: 4pt, grid(
      columns: (30mm, 1fr), text(weight: 700, s.heading),
      text(size: if d.plan.bolts.len() > 100 { 9pt } else { 11pt }, in-order(s, s.fours.map(f => box(f)).join([#h(4pt)#text(weight: 700)[/] #h(1pt)]))),
    ))
  }
  if d.sequence.notes.len() > 0 { small(d.sequence.notes.join(" ")) }
}

#let readings(d) = block(above: 8pt, below: 0pt, width: 100%, breakable: false, grid(
  columns: (1fr, 1fr), column-gutter: 6mm,
  {
    heading-line(l.boxes.title)
    table(
      columns: (1fr, 29mm, 19mm), align: start + horizon,
      table.header(..(l.boxes.reading, l.boxes.limits, l.boxes.measured).map(head-cell)),
      ..d.boxes.readings.map(r => (r.name, r.limit, [])).flatten(),
    )
    small(d.boxes.sources)
  },
  {
    heading-line(l.boxes.gaps)
    table(
      columns: (1fr,) + (16mm,) * 4,
      rows: (auto,) + (7.4mm,) * l.boxes.gapWhen.len(),
      align: start + horizon,
      table.header(..("", ..d.boxes.gapPlaces).map(head-cell)),
      ..l.boxes.gapWhen.map(w => (w, [], [], [], [])).flatten(),
    )
    small(l.boxes.gapsNote)
  },
))

#let signing(d) = block(above: 10pt, breakable: true, {
  heading-line(l.signOff.title)
  table(
    columns: (1fr, 42mm, 30mm, 28mm),
    align: start + horizon,
    rows: (auto,) + (7.2mm,) * d.signOff.len(),
    table.header(..(l.signOff.step, l.signOff.name, l.signOff.time, l.signOff.initials).map(head-cell)),
    ..d.signOff.map(s => (s, [], [], [])).flatten(),
  )
})

#let stop-line = block(width: 100%, stroke: 2pt + black, inset: 6pt, above: 8pt, breakable: false, {
  text(size: 13pt, weight: 700, l.stop.heading)
  h(6pt)
  text(size: 9pt, weight: 600, l.stopText)
  linebreak()
  v(2pt)
  text(size: 8pt, l.stop.phone + " ")
  blank-line(60mm)
})

#let cautions(d) = block(width: 100%, stroke: 0.8pt + black, inset: 6pt, above: 6pt, {
  set list(spacing: 3.4pt, marker: [–])
  block(below: 4pt, text(size: 11pt, weight: 700, l.safety.title))
  let third = calc.ceil(l.safety.lines.len() / 3)
  grid(columns: (1fr, 1fr, 1fr), column-gutter: 5mm, ..l.safety.lines.chunks(third).map(c => list(..c)))
  if d.cautions.len() > 0 {
    block(above: 5pt, below: 4pt, text(weight: 700, l.safety.site))
    list(..d.cautions.map(c => text(weight: 600, c)))
  }
  block(above: 5pt, small(l.safety.defers))
})

// Who reads the values reads the cautions: they never come on different pages, whatever is pushed from the first.
#let values(d) = block(width: 100%, above: 0pt, below: 0pt, breakable: not d.cautionsFit, {
  cautions(d)
  passes(d)
  stop-line
})

#let photo(p) = block(above: 4pt, breakable: false, {
  set align(center)
  image(p.path, width: 100%, height: 36mm, fit: "contain", alt: p.caption)
  block(above: 2pt, small(p.caption))
})

#let sheet(d, index) = {
  let last-place = label("end-" + str(index))
  set page(
    paper: "a4",
    margin: (x: 12mm, top: 11mm, bottom: 13mm),
    header: context { if counter(page).get().first() > 1 { small(strong(d.tag) + " · " + d.stageWord) } },
    footer: context {
      let last = counter(page).at(last-place).first()
      grid(
        columns: (1fr, auto),
        { if not d.valid { text(size: 8.4pt, weight: 700, d.banners.filter(b => b.withholds).map(b => b.heading).join(" · ")); linebreak() }; small((if d.tag.clusters().len() > 60 { "" } else { d.tag + " · " }) + d.version) },
        align(end + bottom, small(page-of(counter(page).get().first(), last))),
      )
    },
  )
  counter(page).update(1)
  header(d)
  v(3pt)
  for b in d.banners { banner(b.heading, b.text) }
  let own = d.plan.ownPage
  v(3pt)
  grid(
    columns: if own { (1fr, 1fr) } else { (1fr, 90mm) }, column-gutter: 6mm,
    { for s in (if own { d.facts.slice(0, 3) } else { d.facts }) { section(s) } },
    {
      if own {
        block(width: 100%, stroke: 0.8pt + black, inset: 6pt, below: 10pt, { plan-caption(d.plan); linebreak(); align(center, text(weight: 700, l.planOnOwnPage)) })
        section(d.facts.at(3))
      } else { plan-block(d, 88mm) }
      if d.target != none { section(d.target) }
      if d.valid and d.calculation != none { small(d.calculation) }
      if d.photo != none { photo(d.photo) }
    },
  )
  readings(d)
  v(8pt, weak: true)
  values(d)
  if not own { sequence(d) }
  signing(d)
  if own {
    pagebreak()
    heading-line(d.plan.title)
    plan-block(d, 172mm)
    sequence(d)
  }
  [#metadata(none)#last-place]
}

// Printed on both sides, each sheet begins on a new leaf.
#set page(paper: "a4")
#for (index, d) in input.sheets.enumerate() {
  if index > 0 { pagebreak(weak: true, to: "odd") }
  sheet(d, index)
}
`;
