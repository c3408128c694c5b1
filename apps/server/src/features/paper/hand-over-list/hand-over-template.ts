import { HEADED_PAPER } from '../headed-paper.ts';
import { PRELUDE } from '../typesetting/prelude.ts';

/** Layout of the hand-over list, in Typst. */
export const HAND_OVER_TEMPLATE = `${PRELUDE}${HEADED_PAPER}
#let d = input
#let t = l.handOver
#let listed(columns, heads, rows) = table(
  columns: columns, align: start + top,
  table.header(..heads.map(head-cell)), ..rows.flatten(),
)
#show: headed-paper.with(d.heading, t.title)
#heading-line(t.zeros)
#table(
  columns: (62mm, 16mm, 1fr), align: (start + top, end + top, start + top),
  table.header(..("", t.count, t.which).map(head-cell)),
  ..d.zeros.map(z => (z.label, text(size: 11pt, weight: 700, str(z.count)), text(size: 8pt, z.which))).flatten(),
)
#heading-line(t.reconciled)
#text(weight: 700, d.reconciled)
#heading-line(t.joints + " (" + str(d.joints.len()) + ")")
#{
  set text(size: 7.8pt)
  listed((1.3fr, 0.8fr, 0.8fr, 1.3fr, 1.3fr, 1.1fr, 0.9fr), (t.tag, t.size, t.stage, t.tightBy, t.checkedBy, t.proof, t.handedOver), d.joints)
}
#if d.voided.len() > 0 { heading-line(t.voided); listed((60mm, 1fr), (t.tag, t.voidWhy), d.voided) }
#heading-line(t.exceptions)
#if d.exceptions.len() == 0 { t.noExceptions } else { list(..d.exceptions) }
#heading-line(t.signatures)
#if d.signed.len() == 0 { t.noSignature } else { list(..d.signed) }
#v(6pt)
#block(breakable: false, table(
  columns: (30mm, 1fr, 40mm, 32mm, 42mm), rows: (auto, 11mm, 11mm), align: start + horizon,
  table.header(..("", t.name, t.company, t.time, t.signature).map(head-cell)),
  bold-cell(t.handsOver), [], [], [], [], bold-cell(t.takesOver), [], [], [], [],
))
#v(4pt)
#small(l.safety.defers)
`;
