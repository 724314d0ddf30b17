// What PERT says of the plan, of a milestone or of a length that has a range: closed forms, so that a pointer passing by may
// ask for them. The runs of `screed risk` are never made here.
import { dayAndMonth } from '#kit/dates';
import type { Step } from '#model/model';
import { deviationOf, expectedLength, pertOf } from '#schedule/risk/pert';
import { endsOf } from '#schedule/risk/ranges';
import { hasFinished } from '#schedule/timing';
import { stepFinishDay } from './days.ts';
import { type ListedReason, saying } from './listed-reason.ts';
import { pertAnswer } from './risk.ts';
import { pertText } from './risk-table.ts';
import { type View, writeDays } from './view.ts';

/** Of the whole plan; undefined where no length has a range. */
export function planRisk(view: View): ListedReason | undefined {
  const answer = pertAnswer(view);
  if (answer === undefined) return undefined;
  const target = view.plan.model.plan?.given.target?.value;
  const text = pertText(answer, view.style, target === undefined ? undefined : dayAndMonth(target));
  return saying('by the ranges of its lengths', `${text} "screed risk" runs the plan itself.`, [
    saying('longest chain of average lengths', answer.chain.join(', ')),
  ]);
}

/** Of a milestone, or of a step with a deadline, that is still ahead. */
export function stepRisk(step: number, view: View): ListedReason | undefined {
  const { model, timeline } = view.plan;
  const { kind, given } = timeline.steps.list[step]!;
  if ((kind !== 'milestone' && given.deadline === undefined) || hasFinished(timeline.timing, step)) return undefined;
  const pert = pertOf(model, timeline);
  if (pert === undefined || pert.deviations[step] === 0) return undefined;
  const finish = pert.finish[step]!;
  return saying(
    'by PERT, along one chain',
    `${stepFinishDay(finish, finish, timeline)} on average, standard deviation ${writeDays(pert.deviations[step]!, view.style)}; too hopeful where chains meet`,
  );
}

/** A range that was given for a length: from where to where, and what PERT makes of it. */
export function rangeReasons(step: Step, view: View): readonly ListedReason[] {
  const takes = step.kind === 'task' || step.kind === 'inspection' ? step.given.takes : undefined;
  const ends = takes === undefined ? undefined : endsOf(takes.value.time);
  if (ends === undefined) return [];
  const [least, most] = ends;
  const likely = takes!.value.likely?.value ?? takes!.value.time.value;
  const range = { step: 0, what: 'length', least, likely, most, from: 'step' } as const;
  const write = (minutes: number): string => writeDays(minutes, view.style);
  return [
    saying('range', `${write(least)} to ${write(most)}, likely ${write(likely)}`),
    {
      ...saying('average, by PERT', write(expectedLength(range))),
      formula: '(least + 4 × likely + most) ÷ 6',
    },
    { ...saying('standard deviation, by PERT', write(deviationOf(range))), formula: '(most − least) ÷ 6' },
  ];
}
