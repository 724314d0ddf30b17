// Prints a made-up plan of so many lines: `npm run --silent big-plan -- 10000`.
import { bigPlan } from './plan/big-plan.ts';

const lines = Number(process.argv[2] ?? 10_000);
if (!Number.isInteger(lines) || lines < 1) {
  process.stderr.write('How many lines? For example: npm run --silent big-plan -- 10000\n');
  process.exit(2);
}
process.stdout.write(bigPlan(lines));
