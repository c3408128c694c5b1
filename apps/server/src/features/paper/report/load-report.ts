import type { AreasAnswer, SystemsAnswer, TodayAnswer } from '@seatwell/contract';
import { areas } from '../../areas/queries.ts';
import type { Reading } from '../../reading/reading.ts';
import { systems } from '../../systems/queries.ts';
import { today } from '../../today/queries.ts';
import { siteName } from '../site-name.ts';

/** Everything that the progress report is made from: the answers that its screen shows. */
export interface ReportSource {
  readonly site: string;
  readonly today: TodayAnswer;
  readonly areas: AreasAnswer['rows'];
  readonly systems: SystemsAnswer['rows'];
  readonly address: string;
}

export async function loadReport(reading: Reading, origin: string): Promise<ReportSource> {
  const [site, todayAnswer, areasAnswer, systemsAnswer] = await Promise.all([
    siteName(reading),
    today(reading),
    areas(reading),
    systems(reading),
  ]);
  return {
    site,
    today: todayAnswer,
    areas: areasAnswer.rows,
    systems: systemsAnswer.rows,
    address: `${origin}/shutdowns/${reading.shutdownId}/report`,
  };
}
