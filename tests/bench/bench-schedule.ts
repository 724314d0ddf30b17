// `npm run --silent bench-schedule -- FOLDER SET SCHEDULES`: the search on PSPLIB's instances, in the convention of the
// literature: J30 as mean deviation from the optimum, J60 and J120 from the critical path, each pass one schedule (Kolisch &
// Hartmann, European Journal of Operational Research 174 (2006) 23–37). `--seed S` and `--every N` (each Nth instance) may follow.
import process from 'node:process';
import { parseArgs } from 'node:util';
import { measureSearch } from '#tests/support/measured-search';
import { hasSet, SETS } from '#tests/support/psplib';

const { positionals, values } = parseArgs({
  allowPositionals: true,
  options: { seed: { type: 'string', default: '1' }, every: { type: 'string', default: '1' } },
});
const [folder = '', name = '', schedules = ''] = positionals;
const set = SETS.find((each) => each === name);
const limit = Number(schedules);
if (set === undefined || !(Number.isInteger(limit) && limit > 0)) {
  process.stderr.write(`bench-schedule FOLDER ${SETS.join('|')} SCHEDULES [--seed S] [--every N]\n`);
  process.exitCode = 2;
} else if (!hasSet(folder, set)) {
  process.stderr.write(`${folder} holds no set ${set}.\n`);
  process.exitCode = 2;
} else {
  const result = measureSearch(folder, set, limit, { seed: Number(values.seed), every: Number(values.every) });
  process.stdout.write(`${JSON.stringify(result)}\n`);
  if (result.violations > 0) process.exitCode = 1;
}
