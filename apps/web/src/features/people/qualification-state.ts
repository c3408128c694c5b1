import type { PersonRow, QualificationRow } from '@seatwell/contract';

export type QualificationState = QualificationRow['state'];

/** How a person stands: the state that somebody must look at first, or none where nothing is recorded. */
export function worstState(qualifications: readonly Pick<QualificationRow, 'state'>[]): QualificationState | 'none' {
  const order: readonly QualificationState[] = ['lapsing', 'lapsed', 'not-yet', 'in-date', 'withdrawn'];
  return order.find((state) => qualifications.some((each) => each.state === state)) ?? 'none';
}

/** What a person is qualified for today, each once. */
export function qualifiedToday(person: Pick<PersonRow, 'qualifications'>): readonly string[] {
  const current = person.qualifications.filter((each) => each.state === 'in-date' || each.state === 'lapsing');
  return [...new Set(current.flatMap((each) => each.qualifiedFor))];
}

/** People whose name, company, badge, trade or crew holds every word typed. */
export function peopleFound(rows: readonly PersonRow[], typed: string): readonly PersonRow[] {
  const words = typed.toLowerCase().split(/\s+/).filter(Boolean);
  return rows.filter((row) => {
    const hay = [row.name, row.company, row.badge, row.trade, ...row.crews.map((crew) => crew.code)]
      .filter(Boolean)
      .join(' ')
      .toLowerCase();
    return words.every((word) => hay.includes(word));
  });
}
