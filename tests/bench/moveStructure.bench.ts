import type { Question } from '../../src/assess/assessment.ts';
import { createSession, runSteps } from '../../src/assess/session.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { streetPlan } from '../assess/streetPlan.ts';
import { chanceFrom } from '../house/seeded.ts';
import type { Bench } from './main.ts';
import { median, ratio, table, timesOf } from './rounds.ts';

const [HOUSES, CAMERAS, ROUNDS] = [200, 16, 7];
/** Cameras that look down at the street, and such as look along it, past the horizon. */
const TILTS = [45, 18];
/** The bar for those that look down: working all out anew takes so many times longer. */
const BAR = 1.5;

const GROUND: Question = {
  target: { kind: 'ground', height: 0 },
  alone: null,
  situation: null,
  causes: 'quick',
};

function moved(plan: Plan, id: string, by: number): Plan {
  const house = plan.structures[id];
  if (house?.kind !== 'building') throw new Error('the street has houses');
  const outline = house.outline.map(([x, y]) => [x + by, y + by / 2] as const);
  return { ...plan, structures: { ...plan.structures, [id]: { ...house, outline } } };
}

/** The cameras that a job works out. */
function workedOut(steps: Generator<{ readonly doing: string }, unknown, void>): number {
  let count = 0;
  for (let next = steps.next(); next.done !== true; next = steps.next())
    if (next.value.doing.startsWith('Working out')) count += 1;
  return count;
}

async function measure(plan: Plan, id: string, causes: Question['causes']) {
  const question = { ...GROUND, causes };
  const session = createSession();
  runSteps(session.steps(plan, question, 0));
  let step = 0;
  // Never a place that is still remembered.
  const next = () => moved(plan, id, 0.3 * Math.sin((step += 1)));
  const touched = workedOut(session.steps(next(), question, step));
  const times = await timesOf(
    {
      one: () => void runSteps(session.steps(next(), question, step)),
      all: () => {
        const anew = createSession();
        const there = next();
        // What a session that remembers only solids has at hand: the houses that did not move are built.
        runSteps(anew.cover(plan, question, { whole: [], causes: [] }, false));
        const start = performance.now();
        runSteps(anew.steps(there, question, step));
        return Promise.resolve(performance.now() - start);
      },
    },
    ROUNDS,
    chanceFrom(11),
  );
  return { touched, one: times('one'), all: times('all') };
}

const bench: Bench = {
  title: `One house of a street moved: ${HOUSES} houses, ${CAMERAS} cameras, script time in one thread`,
  async run() {
    const rows: (readonly (string | number)[])[] = [];
    let slow = false;
    for (const tilt of TILTS) {
      const plan = streetPlan(HOUSES, CAMERAS, tilt);
      for (const causes of ['quick', 'exact'] as const)
        for (const id of ['H60', 'H110']) {
          const { touched, one, all } = await measure(plan, id, causes);
          const times = ratio(all, one);
          slow ||= tilt === TILTS[0] && times < BAR;
          const spent = [median(one).toFixed(1), median(all).toFixed(1)];
          rows.push([tilt, id, causes, touched, ...spent, times.toFixed(1)]);
        }
    }
    const lines = table(
      ['tilt, °', 'house', 'causes', 'cameras touched', 'only those, ms', 'all anew, ms', 'all ÷ those'],
      rows,
    );
    if (slow) throw new Error(`below ${BAR} times:\n  ${lines.join('\n  ')}`);
    return lines;
  },
};

export default bench;
