// A plan's text with the built-in library → everything the checker says of it, as short lines a test can name.
import { messageOf } from '#kit/finding';
import { lineOf } from '#model/standing';
import { analyse, type Memory, type Plan } from '#server/pipeline';
import { builtIn } from './built-in.ts';

export interface Checked {
  readonly plan: Plan;
  /** 'error rooms/overlap bath': severity, code, and the declaration it stands at; in the order they are told. */
  readonly told: readonly string[];
  /** The same without notes. */
  readonly loud: readonly string[];
  /** The sentences under a code. */
  readonly messages: (code: string) => readonly string[];
  /** What the findings under a code stand at: 'line 3: 10' x 8'. */
  readonly marks: (code: string) => readonly string[];
}

/** `text` is one file, or files by path with the first as root. Indentation common to all lines goes. */
export function checked(
  text: string | Readonly<Record<string, string>>,
  options: { asOf?: number; memory?: Memory } = {},
): Checked {
  const texts = typeof text === 'string' ? { 'plan.screed': outdent(text) } : text;
  const root = Object.keys(texts)[0] ?? 'plan.screed';
  const { memory, ...asOf } = options;
  const plan = analyse({ root, texts, library: builtIn(), ...asOf }, memory);
  const told = plan.findings.map(({ severity, code, place }) => `${severity} ${code} ${place.slot.name}`);
  const of = (code: string) => plan.findings.filter((found) => found.code === code);
  return {
    plan,
    told,
    loud: told.filter((line) => !line.startsWith('note ')),
    messages: (code) => of(code).map(messageOf),
    marks: (code) =>
      of(code).map(({ place }) => {
        const line = lineOf(place, plan.model);
        const whole = (texts[place.slot.file] ?? '').split('\n')[line] ?? '';
        const indent = whole.length - whole.trimStart().length;
        return `line ${line + 1}: ${whole.slice(indent + place.spot.from, indent + place.spot.to)}`;
      }),
  };
}

function outdent(text: string): string {
  const lines = text
    .replace(/^\n/, '')
    .replace(/\n\s*$/, '\n')
    .split('\n');
  const indent = Math.min(...lines.filter((line) => line.trim() !== '').map((line) => line.length - line.trimStart().length));
  return lines.map((line) => line.slice(indent)).join('\n');
}
