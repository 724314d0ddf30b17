// How fast the built language server answers, seen from outside, as JSON: `npm run --silent bench`. Lengths of plans and
// rounds may be given: `npm run --silent bench -- --lines 1000,10000 --rounds 10`.
import { existsSync } from 'node:fs';
import { cpus } from 'node:os';
import { resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { measureSession, type Session } from './session.ts';
import { measureStart } from './start.ts';

const { values } = parseArgs({
  options: {
    server: { type: 'string', default: 'dist/screed-language-server.js' },
    lines: { type: 'string', default: '1000,10000' },
    rounds: { type: 'string', default: '10' },
  },
});
const server = resolve(values.server);
if (!existsSync(server)) {
  process.stderr.write(`${server} does not exist: run npm run build first\n`);
  process.exit(2);
}
const rounds = Number(values.rounds);
const start = await measureStart(server, Math.max(5, rounds));
const plans: Session[] = [];
for (const lines of values.lines.split(',')) plans.push(await measureSession(server, Number(lines), rounds));
const [smallest, largest] = [plans[0], plans.at(-1)];
const growth = smallest && largest ? largest.keystroke.p50 / smallest.keystroke.p50 : undefined;
const report = {
  node: process.version,
  processor: `${cpus().length} × ${cpus()[0]?.model ?? 'unknown'}`,
  start,
  plans,
  /** Keystroke on the longest plan over that on the shortest, middle values. */
  growth: growth === undefined ? undefined : Math.round(growth * 100) / 100,
};
process.stdout.write(`${JSON.stringify(report, undefined, 2)}\n`);
