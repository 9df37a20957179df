/** The largest import within the documented limits, made up: a thousand sprints of thirty cards, in four files of 4.6 MB. */
import { dayPlus } from '../../src/sprint/calendar.ts';

const SPRINTS = 1_000;
const CARDS_A_SPRINT = 30;
/** A team that has answers of its last sprints only. */
const ANSWERED_SHARE = 0.3;
/** Of every other card of those sprints, on each day. */
const DAYS = 4;
const FILE_BYTES = 4_600_000;
const FIRST_DAY = '2007-01-01';

export interface ImportFile {
  readonly name: string;
  readonly content: Buffer;
}

const nameOf = (sprint: number): string => `Lock ${sprint + 1}`;
const firstDayOf = (sprint: number): string => dayPlus(FIRST_DAY, 7 * sprint);

/** A last column that means nothing here makes each as large as a file may be. */
function fileOf(name: string, header: string, lines: readonly string[], bytes: number): ImportFile {
  const plain = lines.reduce((sum, line) => sum + line.length + 2, header.length + 10);
  const remark = 'x'.repeat(Math.max(0, Math.floor((bytes - plain) / lines.length)));
  const all = [`${header},remark`, ...lines.map((line) => `${line},${remark}`)];
  return { name, content: Buffer.from(all.join('\n')) };
}

/** @param bytes of each file */
export function largestImport(sprintCount = SPRINTS, bytes = FILE_BYTES): ImportFile[] {
  const isAnswered = (sprint: number): boolean => sprint >= sprintCount * (1 - ANSWERED_SHARE);
  const sprints: string[] = [];
  const cards: string[] = [];
  const answers: string[] = [];
  const changes: string[] = [];
  for (let sprint = 0; sprint < sprintCount; sprint += 1) {
    const [name, first] = [nameOf(sprint), firstDayOf(sprint)];
    sprints.push(`${name},${first},${dayPlus(first, 4)},${5 * CARDS_A_SPRINT}`);
    for (let card = 1; card <= CARDS_A_SPRINT; card += 1) {
      const isDropped = card === CARDS_A_SPRINT && isAnswered(sprint);
      cards.push(`${name},${card},Tide table ${card},5,${isAnswered(sprint) ? '' : 'finished'}`);
      if (isDropped) changes.push(`${name},${card},${first},dropped,No berth`);
      if (!isAnswered(sprint) || card % 2 === 0) continue;
      for (let day = 0; day < DAYS; day += 1) {
        answers.push(`${name},${card},${dayPlus(first, day)},1,${4 - day}`);
      }
    }
  }
  return [
    fileOf('sprints.csv', 'name,first day,last day,commitment', sprints, bytes),
    fileOf('cards.csv', 'sprint,card,title,estimate,state', cards, bytes),
    fileOf('answers.csv', 'sprint,card,day,worked,left', answers, bytes),
    fileOf('changes.csv', 'sprint,card,day,change,reason', changes, bytes),
  ];
}
