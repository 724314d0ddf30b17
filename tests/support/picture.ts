// Everything a person could see of a plan, as plain data: what "the same answer" means in tests.
import { messageOf } from '#kit/finding';
import { lineOf } from '#model/standing';
import type { Plan } from '#server/pipeline';

export interface Picture {
  readonly findings: readonly string[];
  readonly lines: readonly string[];
  readonly steps: readonly string[];
  readonly costs: readonly string[];
  readonly total: number;
}

export function pictureOf(plan: Plan): Picture {
  const { timeline, takeOff, budget, model } = plan;
  return {
    findings: plan.findings.map(
      (each) =>
        `${each.place.slot.file}:${lineOf(each.place, model)}:${each.place.spot.from}-${each.place.spot.to} ${each.severity} ${each.code} ${messageOf(each)}`,
    ),
    lines: takeOff.lines.map(
      (line) => `${line.id} ${line.net.value} ${line.needed?.value} ${line.hours?.value} ${line.work?.name}`,
    ),
    steps: timeline.steps.list.map((step, at) => {
      const { crews, floats, byLinks } = timeline;
      return `${step.name} ${crews.start[at]} ${crews.finish[at]} ${floats.totalFloat[at]} ${floats.freeFloat[at]} ${byLinks.start[at]} ${timeline.durations[at]?.minutes}`;
    }),
    costs: budget.lines.map((line) => `${line.kind} ${line.rung} ${line.label} ${line.cents} ${line.step ?? ''}`),
    total: budget.total,
  };
}
