// A plan's text, read with the built-in library or with rows of the test's own → model, take-off and findings.
import { readdirSync, readFileSync } from 'node:fs';
import { join, sep } from 'node:path';
import type { Finding } from '#kit/finding';
import { messageOf } from '#kit/finding';
import { noWork, type Work } from '#kit/work';
import { type Library, type Model, type ModelMemory, modelMemory, readLibrary, resolve, type Texts } from '#model/resolve';
import type { Line, Measure, Purchase } from '#takeoff/lines';
import { type TakeOff, type TakeOffMemory, takeOff, takeOffMemory } from '#takeoff/take-off';

export interface PlanMemory {
  readonly model: ModelMemory;
  readonly takeOff: TakeOffMemory;
}
export interface TestPlan {
  readonly model: Model;
  readonly takeOff: TakeOff;
  readonly findings: readonly Finding[];
  /** 'code: message', in the order they were found. */
  readonly messages: readonly string[];
  readonly work: Work;
  /** The lines by a measure, and of the goods if named. */
  readonly lines: (measure: Measure, goods?: string) => readonly Line[];
  /** The only line by a measure. */
  readonly line: (measure: Measure, goods?: string) => Line;
  readonly purchase: (item: string) => Purchase;
}
interface Options {
  /** The library of the product, or rows of the test's own; none unless said. */
  readonly library?: 'built-in' | readonly string[];
  readonly memory?: PlanMemory;
}

export function emptyPlanMemory(): PlanMemory {
  return { model: modelMemory(), takeOff: takeOffMemory() };
}

/** `text` is one file, or files by path with the first as root. */
export function planOf(text: string | Texts, { library, memory = emptyPlanMemory() }: Options = {}): TestPlan {
  const texts: Texts = typeof text === 'string' ? { 'plan.screed': text } : text;
  const root = Object.keys(texts)[0] ?? 'plan.screed';
  const rows =
    library === 'built-in'
      ? builtIn()
      : readLibrary(
          [...(library ?? []), studsAsUsual()].map((each, index) => ({ path: `rows-${index}.screed`, text: each })),
          noWork(),
        );
  const work = noWork();
  const resolved = resolve(root, texts, rows, memory.model, work);
  const taken = takeOff(resolved.value, memory.takeOff, work);
  const findings = [...resolved.findings, ...taken.findings];
  const lines = (measure: Measure, goods?: string): readonly Line[] =>
    taken.value.lines.filter(
      (line) => line.measure === measure && (goods === undefined || line.goods?.name === goods || line.item === goods),
    );
  return {
    model: resolved.value,
    takeOff: taken.value,
    findings,
    messages: findings.map((found) => `${found.code}: ${messageOf(found)}`),
    work,
    lines,
    line: (measure, goods) => {
      const found = lines(measure, goods);
      if (found.length !== 1)
        throw new Error(
          `${found.length} lines by ${measure}: ${found.map(({ id }) => id).join(', ')}\n${findings.map(messageOf).join('\n')}`,
        );
      return found[0]!;
    },
    purchase: (item) => {
      const found = taken.value.purchases().filter((each) => each.item === item || each.goods.name === item);
      if (found.length !== 1)
        throw new Error(
          `${found.length} purchases of ${item}\n${taken.value
            .purchases()
            .map((each) => each.item)
            .join(', ')}`,
        );
      return found[0]!;
    },
  };
}

let kept: Library | undefined;
function builtIn(): Library {
  kept ??= readLibrary(builtInTexts(), noWork());
  return kept;
}

/** How studs and plates are counted: every plan has that, whatever the other rows of a test. */
function studsAsUsual(): string {
  return builtInTexts().find(({ path }) => path.endsWith('/conventions.screed'))!.text;
}

/** The library's texts as they lie on disk, in the order of their paths. */
export function builtInTexts(): readonly { readonly path: string; readonly text: string }[] {
  const folder = join(import.meta.dirname, '../../server/library');
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.screed'))
    .map((file) => file.split(sep).join('/'))
    .sort()
    .map((file) => ({ path: `library/${file}`, text: readFileSync(join(folder, file), 'utf8') }));
}
