// What the model's tests look with: a plan's text and, where wanted, library text; the model and its findings as sentences.
import { messageOf } from '#kit/finding';
import { noWork, type Work } from '#kit/work';
import { type Model, type ModelMemory, modelMemory, readLibrary, resolve, type Texts } from '#model/resolve';

export interface Look {
  readonly model: Model;
  /** 'code: sentence' in the order found. */
  readonly findings: readonly string[];
  readonly codes: readonly string[];
  readonly work: Work;
}

export function look(plan: string | Texts, library = '', memory: ModelMemory = modelMemory()): Look {
  const texts = typeof plan === 'string' ? { 'plan.screed': plan } : plan;
  const known = readLibrary(library === '' ? [] : [{ path: 'library/rows.screed', text: library }], noWork());
  return lookWith(texts, known, memory);
}

export function lookWith(texts: Texts, library: ReturnType<typeof readLibrary>, memory: ModelMemory): Look {
  const work = noWork();
  const root = Object.keys(texts)[0] ?? 'plan.screed';
  const { value, findings } = resolve(root, texts, library, memory, work);
  return {
    model: value,
    findings: findings.map((each) => `${each.code}: ${messageOf(each)}`),
    codes: findings.map((each) => each.code),
    work,
  };
}
