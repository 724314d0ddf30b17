// Examples for findings about words, names and units: by code, a plan that is wrong and one that is right. Both run as tests.
import { instead, type Shown } from './examples-kit.ts';

export const WORDS_EXAMPLES: Shown = {
  'words/unknown-kind': instead('', 'romo bath "Bath"', 'room bath "Bath"'),
  'words/unknown-property': instead('room bath "Bath"', 'flor porcelain-tile', 'floor porcelain-tile'),
  'words/misplaced-kind': {
    wrong: 'level main "Main floor"\n  room bath "Bath"\n',
    right: 'level main "Main floor"\nroom bath "Bath" on main\n',
  },
  'words/name-missing': instead('', 'room "Bath"', 'room bath "Bath"'),
  'words/name-in-words': instead('', 'room main bath', 'room main-bath "Main bath"'),
  'words/name-is-joining-word': instead('', 'task after takes 1d', 'task clean-up takes 1d'),
  'words/value-missing': instead('room bath "Bath"', 'size', "size 5' x 8'"),
  'words/value-unfit': instead('room bath "Bath"', 'use washing', 'use bathing'),
  'words/not-expected': instead('room bath "Bath"', "size 5' x 8' x 9'", "size 5' x 8'"),
  'words/given-twice': instead('room bath "Bath"', "size 5' x 8'\nsize 5' x 9'", "size 5' x 9'"),
  'words/word-behind': instead('trench water "Water line"', 'deep 42"', '42" deep'),
  'words/below-only': instead('', 'room bath "Bath" use bathing', 'room bath "Bath"\n  use bathing'),
  'names/unknown': instead('level main "Main floor"', 'room bath "Bath" on mian', 'room bath "Bath" on main'),
  'names/unknown-goods': instead('room bath "Bath"\n  size 5\' x 8\'', 'floor porcelan-tyle', 'floor porcelain-tile'),
  'names/declared-twice': instead('room bath "Main bath"', 'room bath "Guest bath"', 'room guest-bath "Guest bath"'),
  'names/loop': instead("let long = wide + 2'", "let wide = long - 2'", "let wide = 10'"),
  'names/no-such-value': instead('room bath "Bath"\n  size 5\' x 8\'', 'let tile = bath.flor-area', 'let tile = bath.floor-area'),
  'names/include-missing': {
    wrong: 'include "trades.screed"\ntask walls-up takes 3d\n',
    right: 'trade framing crew of 3\ntask walls-up takes 3d by framing\n',
  },
  'names/include-ring': { wrong: 'plan house "House"\ninclude "plan.screed"\n', right: 'plan house "House"\n' },
  'units/mixed': instead('', "let left = 12' + 30 sf", "let left = 12' + 30'"),
  'units/wrong': instead('level main "Main floor"', "height 4' * 2'", "height 4' * 2"),
  'units/missing': instead('level main "Main floor"', 'height 8', "height 8'"),
  'units/divided-by-zero': instead('', "let step = 9' / 0", "let step = 9' / 14"),
};
