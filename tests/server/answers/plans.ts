// A plan's text with the built-in library, as an answer sees it.
import type { PlanAsked } from '#answers/checked';
import { type View, viewOf } from '#answers/view';
import { analyse, BASELINE_FILE, readBaseline } from '#server/pipeline';
import { builtIn, sampleTexts } from '#tests/support/built-in';
import { dedent } from '#tests/support/fixture';

export function viewText(text: string, asOf?: number): View {
  return viewOf(
    analyse({
      root: 'plan.screed',
      texts: { 'plan.screed': dedent(text) },
      library: builtIn(),
      ...(asOf === undefined ? {} : { asOf }),
    }),
  );
}

const kept = new Map<string, View>();
/** A sample, read once. */
export function viewSample(sample: string, root = 'plan.screed'): View {
  let view = kept.get(sample);
  if (view === undefined) {
    const texts = sampleTexts(sample);
    kept.set(sample, (view = viewOf(analyse({ root: `samples/${sample}/${root}`, texts, library: builtIn() }))));
  }
  return view;
}

/** A plan as `check` is asked about it: files by path, or one; with a baseline's text beside it. */
export function asked(
  text: string | Readonly<Record<string, string>>,
  { baseline, asOf }: { readonly baseline?: string; readonly asOf?: number } = {},
): PlanAsked {
  const texts = typeof text === 'string' ? { 'plan.screed': dedent(text) } : text;
  const plan = analyse({
    root: Object.keys(texts)[0]!,
    texts,
    library: builtIn(),
    ...(asOf === undefined ? {} : { asOf }),
    ...(baseline === undefined ? {} : { baseline: readBaseline(baseline, BASELINE_FILE) }),
  });
  return { view: viewOf(plan), only: undefined };
}
