// Rows of what the checks hold a plan against: orders of work, work that other work calls for, least values, hazards. Each
// shows in its page a plan that is wrong and one that is right.
import { anyName, code, condition, fields, kind, listOf, oneOf, planLine, properties, rest, text, wait } from './types.ts';

/** Shared by every row that may stand on a model code. */
export const editions = properties({
  section: {
    takes: listOf(fields({ edition: code, section: text })),
    repeats: true,
    help: 'Where it stands in an edition.',
    example: 'section irc-2021 "R109.1.1"',
  },
});

/** Lines of a plan, each as it stands there; what begins with no kind belongs to the line above. The row's page shows them. */
const shown = properties({
  example: {
    takes: planLine,
    repeats: true,
    help: 'A line that both examples of its page begin with.',
    example: 'example room bed "Bedroom"',
  },
  wrong: {
    takes: planLine,
    repeats: true,
    help: 'A line of the example that it speaks up about.',
    example: "wrong size 7' x 9'",
  },
  right: { takes: planLine, repeats: true, help: 'A line of the example that it does not.', example: "right size 7' x 10'" },
});

export const rule = kind({
  word: 'rule',
  help: 'What must come before what, and why.',
  example: 'rule board-before-dry "Board goes up before the house is dry"',
  name: 'required',
  facts: {},
  properties: properties({
    first: { takes: listOf(anyName), help: 'Works, states or inspections that come first.', example: 'first dry' },
    then: { takes: listOf(anyName), help: 'What must wait for them.', example: 'then hang-board' },
    scope: {
      takes: oneOf('same room', 'same element', 'house'),
      help: 'Where the two must meet for it to matter.',
      example: 'scope same room',
    },
    wait: { takes: wait, help: 'Time between them.', example: 'wait 2 days' },
    within: {
      takes: wait,
      help: 'The longest that may pass until the second begins. Their order is asked for by a row without it.',
      example: 'within 18h',
    },
    'good for': {
      takes: wait,
      help: 'How long what comes first stays valid, where the plan’s own step does not say.',
      example: 'good for 180 days',
    },
    'renewed by': {
      takes: listOf(anyName),
      help: 'What begins that time anew; inspections are all visits. The row asks then only that it has not run out.',
      example: 'renewed by inspections',
    },
    relation: {
      takes: oneOf('before', 'hold', 'while', 'once'),
      help: 'Plain order, an approval, a condition that lasts, or a thing owed at the end.',
      example: 'relation hold',
    },
    severity: { takes: oneOf('error', 'warning', 'note'), help: 'How bad it is.', example: 'severity warning' },
    when: {
      takes: condition,
      repeats: true,
      help: 'Only then; several lines must all hold.',
      example: 'when any room has floor plank',
    },
    unless: { takes: condition, repeats: true, help: 'Not then; any one is enough.', example: 'unless plan.zone is 1A' },
    because: { takes: text, help: 'Why it matters on site.', example: 'because "Wet board comes out again."' },
    remedy: { takes: text, help: 'What to do.', example: 'remedy "Start board after dry-in."' },
    ...shown,
    ...editions,
  }),
});

export const need = kind({
  word: 'need',
  help: 'Work that other work, or what the plan holds, calls for.',
  example: 'need window-flashing "Windows are set and nobody flashes them"',
  name: 'required',
  facts: {},
  properties: properties({
    for: {
      takes: oneOf('room', 'foundation', 'roof', 'deck', 'trench', 'crawl', 'dry-well', 'level'),
      inHeader: true,
      help: 'The kind of thing looked at one by one; without it, the plan as a whole.',
      example: 'for room',
    },
    'called by': {
      takes: listOf(anyName),
      repeats: true,
      help: 'Works or steps that call for it, any one of a line; of several lines, each.',
      example: 'called by set-windows',
    },
    'answered by': {
      takes: listOf(anyName),
      help: 'Works, states or visits of which any one is enough.',
      example: 'answered by set-flashing',
    },
    when: {
      takes: condition,
      repeats: true,
      help: 'Only then; several lines must all hold.',
      example: 'when room.use is bathing',
    },
    unless: {
      takes: condition,
      repeats: true,
      help: 'Not then; any one is enough.',
      example: 'unless every room has use garage',
    },
    severity: { takes: oneOf('error', 'warning', 'note'), help: 'How bad it is.', example: 'severity warning' },
    because: { takes: text, help: 'Why it matters on site.', example: 'because "Water comes in behind the siding."' },
    remedy: { takes: text, help: 'What to do.', example: 'remedy "Flash before siding."' },
    ...shown,
    ...editions,
  }),
});

export const minimum = kind({
  word: 'minimum',
  help: 'A least or greatest value of a model code.',
  example: 'minimum sleeping-area "Smallest habitable room" for room',
  name: 'required',
  facts: {},
  properties: properties({
    for: {
      takes: oneOf(
        'room',
        'window',
        'door',
        'level',
        'foundation',
        'crawl',
        'roof',
        'assembly',
        'deck',
        'stair',
        'trench',
        'dry-well',
        'site',
        'plan',
      ),
      inHeader: true,
      help: 'The kind it looks at.',
      example: 'for room',
    },
    when: { takes: condition, repeats: true, help: 'Only then.', example: 'when room.use is sleeping' },
    unless: { takes: condition, repeats: true, help: 'Not then.', example: 'unless room.use is cooking' },
    fact: { takes: code, help: 'The fact it looks at; a row without one reminds.', example: 'fact floor-area' },
    'at least': { takes: rest, help: 'Least value, of the thing looked at.', example: 'at least 70 sf' },
    'at most': { takes: rest, help: 'Greatest value, of the thing looked at.', example: 'at most 44"' },
    or: {
      takes: listOf(condition, 'and'),
      repeats: true,
      help: 'What will do as well: conditions that must all hold.',
      example: 'or level.wall-cavity at least R-13 and level.wall-outside at least R-10',
    },
    together: {
      takes: code,
      help: 'One opening must meet all rows that say this word.',
      example: 'together escape',
    },
    local: {
      takes: text,
      help: 'The local rule that the value comes from; it is named in place of the model code.',
      example: 'local "Rapid City 15.13.100"',
    },
    ...editions,
    severity: { takes: oneOf('error', 'warning', 'note'), help: 'How bad it is.', example: 'severity note' },
    because: { takes: text, help: 'Why it is asked for.', example: 'because "A person must get out."' },
    remedy: { takes: text, help: 'What to do.', example: 'remedy "Choose a larger window."' },
    ...shown,
  }),
});

export const calculation = kind({
  word: 'calculation',
  help: 'A figure that a trade works out of a plan by arithmetic: a load, a rate, a count.',
  example: 'calculation light-circuits "Lighting circuits of 15 A" for plan',
  name: 'required',
  facts: {},
  properties: properties({
    for: {
      takes: oneOf('room', 'level', 'plan'),
      inHeader: true,
      help: 'The kind of thing it is worked out for.',
      example: 'for plan',
    },
    fact: {
      takes: code,
      help: 'The name it is asked by, where that is not its own: several rows may stand for several cases.',
      example: 'fact service-load',
    },
    when: { takes: condition, repeats: true, help: 'Only then.', example: 'when plan.heaters under 4' },
    unless: { takes: condition, repeats: true, help: 'Not then.', example: 'unless room.use is garage' },
    value: { takes: rest, help: 'How it is worked out of the thing and the plan.', example: 'value plan.floor-area * 3 W/sf' },
    'told in': { takes: code, help: 'The unit it is told in, where that is not the usual one.', example: 'told in VA' },
    because: { takes: text, help: 'What it is, and what is in it.', example: 'because "Lamps and outlets of the rooms."' },
    caution: { takes: text, help: 'What it is not, and who decides.', example: 'caution "The licensed electrician decides."' },
  }),
});

export const hazard = kind({
  word: 'hazard',
  help: 'What can hurt someone, where a plan carries it, and what sees to it.',
  example: 'hazard trench-unprotected "A deep trench with nothing that keeps it open" for trench',
  name: 'required',
  facts: {},
  properties: properties({
    for: {
      takes: oneOf('trench', 'dry-well', 'foundation', 'level', 'roof', 'deck', 'plan'),
      inHeader: true,
      help: 'The kind of thing it lies in, each looked at by itself.',
      example: 'for trench',
    },
    during: {
      takes: listOf(anyName),
      help: 'Works that carry it; a plan without them does not.',
      example: 'during set-tile, saw-joints',
    },
    when: {
      takes: condition,
      repeats: true,
      help: 'Only then; several lines must all hold.',
      example: 'when trench.depth at least 60"',
    },
    unless: { takes: condition, repeats: true, help: 'Not then; any one is enough.', example: 'unless trench has protection' },
    'met by': {
      takes: listOf(anyName),
      help: 'Works, states or visits that see to it: a plan with one of them is not reminded.',
      example: 'met by shore-trench',
    },
    tells: {
      takes: listOf(code),
      help: 'Figures of the thing that the finding shows.',
      example: 'tells depth, side-slope, soil-slope',
    },
    severity: {
      takes: oneOf('error', 'warning', 'note'),
      help: 'Error where the plan itself says something dangerous, note where the work only carries it.',
      example: 'severity error',
    },
    because: {
      takes: text,
      help: 'The hazard, and how it hurts.',
      example: 'because "Cave-in: a trench buries whoever is in it."',
    },
    remedy: { takes: text, help: 'The usual measure, and who decides.', example: 'remedy "Slope, shore or shield it."' },
    ...shown,
  }),
});
