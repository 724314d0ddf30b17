// A plan's text with the built-in library, as an answer sees it.
import { type View, viewOf } from '#answers/view';
import { analyse } from '#server/pipeline';
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
