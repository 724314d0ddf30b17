// Fixes of an order that no chain of links holds: links, a step that waits for all, the line moved; each tried out on the
// text, the one that costs the fewest days first. The rule is the test's own.
import { describe, expect, test } from 'vitest';
import type { CodeAction } from 'vscode-languageserver-types';
import { codeActions } from '#editor/code-actions';
import { MOST_STEPS } from '#editor/try-out';
import { GLUE_FIRST } from '#tests/support/glue-first';
import { edited, editing } from './editing.ts';

const CODE = 'sequence/glue-first';

function fixes(steps: string, lineEnd = '\n') {
  const { ask, textOf, position, view } = editing((GLUE_FIRST + steps).replaceAll('\n', lineEnd));
  const found = ask<readonly CodeAction[]>(codeActions, {
    range: { start: position, end: position },
    context: { diagnostics: [] },
  });
  const own = found.filter(({ title, diagnostics }) => diagnostics?.[0]?.code === CODE && !title.startsWith('Accept'));
  const take = (title: string): string => {
    const action = own.find((each) => each.title === title);
    if (action === undefined) throw new Error(`${title} is not offered, but ${own.map((each) => each.title).join('; ')}`);
    return edited(textOf('plan.screed'), action.edit?.changes?.['plan.screed'] ?? []).slice(GLUE_FIRST.length);
  };
  return {
    titles: own.map(({ title }) => title),
    take,
    preferred: own.filter((each) => each.isPreferred).map(({ title }) => title),
    view,
  };
}

test('a link that holds what was luck adds no days', () => {
  const { titles, take } = fixes(`task a does glue takes 1d by crew
task <|>b does clamp takes 1d by others, not before 2027-04-12
`);
  expect(titles).toEqual(['Let "b" wait for "a": adds no days']);
  expect(take(titles[0]!)).toContain('not before 2027-04-12 also after a\n');
});

test('a link that mends what was broken says by how much the end moves', () => {
  // Three days of glue and one to clamp: Thursday in place of Wednesday.
  const { titles } = fixes(`task a does glue takes 3d by crew
task <|>b does clamp takes 1d by others
`);
  expect(titles).toEqual(['Let "b" wait for "a": moves the end by 1 working day']);
});

test('the wait of the rule goes with the link', () => {
  const { view } = fixes(`task a does glue takes 1d by crew\ntask <|>b does clamp takes 1d by others, not before 2027-04-12\n`);
  expect(view.plan.findings.filter(({ code }) => code === CODE)).toHaveLength(1);
  const waiting = editing(
    `${GLUE_FIRST}  wait 2 days\ntask a does glue takes 1d by crew\ntask <|>b does clamp takes 1d by others, not before 2027-04-12\n`,
  );
  const [first] = waiting.ask<readonly CodeAction[]>(codeActions, {
    range: { start: waiting.position, end: waiting.position },
    context: { diagnostics: [] },
  });
  expect(first?.edit?.changes?.['plan.screed']?.[0]?.newText).toBe(' also after a + 2 days');
});

describe('several steps that come first', () => {
  const steps = `task a does glue 50% takes 1d by crew
task c does glue 50% takes 1d by crew after a
task d does glue 50% takes 1d by crew
milestone glued after c, d
task late takes 5d by crew after glued
task <|>b does clamp takes 1d by others, not before 2027-04-12
`.replaceAll('50%', '33%');

  test('the last of each chain, or a step that waits for them all; the one that costs no days first', () => {
    const { titles, preferred } = fixes(steps);
    expect(titles).toEqual([
      'Let "b" wait for "c" and "d": adds no days',
      'Let "b" wait for "glued", which waits for "c" and "d": adds no days',
      'Let "b" wait for "late", which waits for "c" and "d": moves the end by 1 working day',
    ]);
    expect(preferred).toEqual([titles[0]]);
  });

  test('the text after it is one that holds', () => {
    const { take, titles } = fixes(steps);
    for (const title of titles)
      expect(
        editing(GLUE_FIRST + take(title)).view.plan.findings.map(({ code }) => code),
        title,
      ).not.toContain(CODE);
    expect(take(titles[1]!)).toContain('2027-04-12 also after glued\n');
  });
});

describe('moving the line', () => {
  const phase = `phase all in order
  task first takes 1d by crew
  task <|>b does clamp takes 1d by others
    note "Gently"
  task a does glue takes 1d by crew
  task last takes 1d by others after a
`;

  test('below the step that comes first, with all that belongs to it', () => {
    const { titles, take } = fixes(phase);
    expect(titles).toEqual(['Move "b" below "a": adds no days']);
    expect(take(titles[0]!)).toBe(`phase all in order
  task first takes 1d by crew
  task a does glue takes 1d by crew
  task b does clamp takes 1d by others
    note "Gently"
  task last takes 1d by others after a
`);
  });

  test('with the line ends of the file', () => {
    const { take } = fixes(phase, '\r\n');
    expect(take('Move "b" below "a": adds no days')).toContain('glue takes 1d by crew\r\n  task b does');
  });

  test('not a step that says itself what it waits for', () => {
    const { titles } = fixes(
      phase.replace('by others\n    note', 'by others after first\n    note').replace(/after a\n$/, 'after b\n'),
    );
    expect(titles.filter((title) => title.startsWith('Move'))).toEqual([]);
  });
});

test('a link that would close a ring is not offered', () => {
  const { titles } = fixes(`task <|>b does clamp takes 1d by others
task a does glue takes 1d by crew after b
`);
  expect(titles.filter((title) => title.startsWith('Let "b" wait for "a":'))).toEqual([]);
});

test('of a plan too large to try out, the fixes stand without their effect', () => {
  const many = Array.from({ length: MOST_STEPS }, (_, at) => `task t${at} takes 1d by crew\n`).join('');
  const { titles } = fixes(
    `${many}task a does glue takes 1d by crew\ntask <|>b does clamp takes 1d by others, not before 2030-04-12\n`,
  );
  expect(titles[0]).toBe('Let "b" wait for "a"');
});

test('accepting it is offered as well', () => {
  const { ask, position } = editing(`${GLUE_FIRST}task a does glue takes 3d by crew\ntask <|>b does clamp takes 1d by others\n`);
  const all = ask<readonly CodeAction[]>(codeActions, {
    range: { start: position, end: position },
    context: { diagnostics: [] },
  });
  expect(all.map(({ title }) => title)).toContain(`Accept ${CODE} here, with a reason`);
});

describe('where no more than so long may pass', () => {
  const soon = GLUE_FIRST.replace('  severity error', '  within 1d\n  severity error');
  const offered = (steps: string): readonly string[] => {
    const { ask, position } = editing(soon + steps);
    const found = ask<readonly CodeAction[]>(codeActions, {
      range: { start: position, end: position },
      context: { diagnostics: [] },
    });
    return found
      .filter(({ title, diagnostics }) => diagnostics?.[0]?.code === CODE && !title.startsWith('Accept'))
      .map(({ title }) => title);
  };

  test('the first waits for what keeps the second', () => {
    expect(
      offered(`task a does glue takes 1d by crew
task c takes 4d by others
task <|>b does clamp takes 1d by crew after a, c
`),
    ).toEqual(['Let "a" wait for "c": moves the end by 1 working day']);
  });

  test('what has the crew of the second waits until that is done', () => {
    expect(
      offered(`task a does glue takes 1d by crew
task c takes 4d by others
task <|>b does clamp takes 1d by others after a
`),
    ).toEqual(['Let "c" wait for "b": moves the end by 1 working day']);
  });
});
