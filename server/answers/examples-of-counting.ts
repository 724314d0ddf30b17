// Examples for findings of take-off, schedule and acceptance: by code, a plan that is wrong and one that is right. Both run as
// tests.
import { instead, type Shown } from './examples-kit.ts';

export const COUNTING_EXAMPLES: Shown = {
  'takeoff/outline-open': instead(
    'room bath "Bath"',
    "outline east 10', north 8', west 9', south 8'",
    "outline east 10', north 8', west 10', south 8'",
  ),
  'takeoff/outline-empty': instead(
    'room bath "Bath"',
    "outline east 10', west 10'",
    "outline east 10', north 8', west 10', south 8'",
  ),
  'takeoff/outline-crosses': instead(
    'room bath "Bath"',
    "outline east 10', north 8', west 4', south 12', west 6', north 4'",
    "outline east 10', north 8', west 4', south 4', west 6', south 4'",
  ),
  'takeoff/outline-askew': instead(
    'level main "Main floor"',
    "footprint corners 0 x 0, 28' x 0, 28' x 32', 0 x 31'-8\"",
    "footprint corners 0 x 0, 28' x 0, 28' x 32', 0 x 32'",
  ),
  'takeoff/bay-misfit': instead(
    'level main "Main floor"\n  footprint 28\' x 32\'',
    "bay 8' x 2' in south at 22'",
    "bay 8' x 2' in south at 10'",
  ),
  'takeoff/bay-without-roof': {
    wrong: `level main "Main floor"
  footprint 28' x 32'
  bay 8' x 2' in south at 10'
roof top over main
  shape gable 6:12
`,
    right: `level main "Main floor"
  footprint 28' x 32'
  bay 8' x 2' in south at 10'
roof top over main
  shape gable 6:12
roof bay-top over bays of main
  shape hip 6:12
`,
  },
  'takeoff/slanted-trusses': instead(
    "level main \"Main floor\"\n  footprint east 28', north 22', northwest 14'-1 3/4\", west 18', south 32'\nroof top over main\n  shape hip 6:12",
    'framed truss at 24" oc',
    'framed rafter 2x8 at 24" oc',
  ),
  'takeoff/outline-apart': instead(
    'level main "Main floor"',
    "footprint 28' x 32', plus 8' x 8' at 30', 0",
    "footprint 28' x 32', plus 8' x 8' at 28', 0",
  ),
  'takeoff/turn-misfit': instead(
    'stair up "Stair"\n  rise 109 1/4"\n  risers 15\n  tread 10"\n  width 36"',
    'turn after 15, landing 36" x 36"',
    'turn after 7, landing 36" x 36"',
  ),
  'takeoff/height-missing': {
    wrong: 'level main "Main floor"\nroom bath "Bath" on main\n  size 5\' x 8\'\n  walls paint\n',
    right: 'level main "Main floor"\n  height 8\'\nroom bath "Bath" on main\n  size 5\' x 8\'\n  walls paint\n',
  },
  'takeoff/length-missing': instead('foundation perimeter\n  footing 16" x 8"', 'note "from the survey"', "80' long"),
  'takeoff/spacing-missing': {
    wrong: `assembly shed-wall "Shed wall" for wall
  layer stud 2x4
level main "Shed"
  footprint 12' x 16'
  height 8'
  walls shed-wall
`,
    right: `assembly shed-wall "Shed wall" for wall
  layer stud 2x4 at 16" oc
level main "Shed"
  footprint 12' x 16'
  height 8'
  walls shed-wall
`,
  },
  'takeoff/pitch-missing': {
    wrong: 'level main "Shed"\n  footprint 12\' x 16\'\nroof top over main\n  shape gable\n',
    right: 'level main "Shed"\n  footprint 12\' x 16\'\nroof top over main\n  shape gable 6:12\n',
  },
  'takeoff/slope-across': instead(
    `level main "Main floor"
  height 8'
room loft "Loft" on main
  size 12' x 16'`,
    "sloped 5' in west, 9' in north",
    "sloped 5' in west, 9' in east",
  ),
  'takeoff/vault-height': instead(
    `level main "Main floor"
  footprint 20' x 30'
  height 8'
  ceiling vault-lid
roof top over main
  shape gable 6:12
room hall "Hall" on main
  size 19' x 29'`,
    'use living',
    "use living\nsloped 8' in west, 12'-9\" in middle",
  ),
  'takeoff/level-apart': instead(
    `level main "Main floor"
  footprint 28' x 32'
level upper "Upper floor"
  footprint 28' x 20'
  on main`,
    "at 0, 40'",
    "at 0, 12'",
  ),
  'takeoff/roof-under-storey': instead(
    `level main "Main floor"
  footprint 28' x 32'
level upper "Upper floor" on main
  footprint 28' x 20'
roof low over main
  shape shed 3:12, high north`,
    'overhang 12"',
    "overhang 12\"\nsize 28' x 12'",
  ),
  'takeoff/runs-into-nothing': instead(
    `level main "Main floor"
  footprint 28' x 32'
roof top over main
  shape gable 6:12, ridge north-south
roof porch into top in east
  shape gable 6:12`,
    'overhang 12"',
    "overhang 12\"\nsize 8' x 6'",
  ),
  'takeoff/roof-above-ridge': instead(
    `level main "Main floor"
  footprint 28' x 32'
roof top over main
  shape gable 3:12, ridge north-south
roof porch into top in east
  size 20' x 6'`,
    'shape gable 12:12',
    'shape gable 4:12',
  ),
  'takeoff/overhangs-meet': instead(
    `level main "Main floor"
  footprint east 20', north 20', west 9', south 10', west 2', north 10', west 9', south 20'
roof top over main
  shape hip 6:12`,
    'overhang 18"',
    'overhang 6"',
  ),
  'takeoff/ridges-side-by-side': instead(
    `level main "Main floor"
  footprint east 40', north 26', west 10', north 2', west 30', south 28'
roof top over main
  overhang 12"`,
    'shape gable 6:12',
    "shape gable 6:12\nsize 40' x 28'",
  ),
  'takeoff/trusses-meet': instead(
    `level main "Main floor"
  footprint east 40', north 16', west 20', north 14', west 20', south 30'
roof top over main
  shape gable 6:12`,
    'framed truss at 24" oc',
    'framed truss at 24" oc\naccept takeoff/trusses-meet "Counted from the truss maker\'s layout, sheet T-1"',
  ),
  'takeoff/partitions-missing': {
    wrong: `level main "Main floor"
  footprint 20' x 24'
  height 8'
  partitions int-2x4
room bed "Bedroom" on main
room bath "Bath" on main
`,
    right: `level main "Main floor"
  footprint 20' x 24'
  height 8'
  partitions int-2x4, 46' long
room bed "Bedroom" on main
room bath "Bath" on main
`,
  },
  'takeoff/depth-missing': instead(
    'foundation floor',
    'slab 4", 200 sf, over gravel-base',
    'slab 4", 200 sf, over gravel-base 4"',
  ),
  'takeoff/size-missing': instead(
    '',
    'trench water "Water line" 42" deep, 12" wide',
    'trench water "Water line" 60\' long, 42" deep, 12" wide',
  ),
  'takeoff/slope-missing': {
    wrong: `level main "Main floor"
  footprint 20' x 24'
foundation cellar under main
  footing 20" x 8"
  wall 8" x 90"
  bottom 84" below grade
`,
    right: `site lot "Lot"
  soil type-C
level main "Main floor"
  footprint 20' x 24'
foundation cellar under main
  footing 20" x 8"
  wall 8" x 90"
  bottom 84" below grade
`,
  },
  'takeoff/goods-open': {
    wrong: `work pour-strip "Pour the strip"
  installs concrete-2500, concrete-3000 by footing-volume
foundation strip
  40' long
  footing 20" x 8"
`,
    right: `work pour-strip "Pour the strip"
  installs concrete-3000 by footing-volume
foundation strip
  40' long
  footing 20" x 8"
`,
  },
  'schedule/loop': {
    wrong: 'task board takes 2d after paint\ntask paint takes 2d after board\n',
    right: 'task board takes 2d\ntask paint takes 2d after board\n',
  },
  'schedule/no-duration': instead('trade framing crew of 3', 'task walls-up by framing', 'task walls-up takes 3d by framing'),
  'schedule/no-range': instead('plan house', '  lengths 140%', '  lengths 85%..140%'),
  'schedule/likely-outside': instead('', 'task wires takes 3d..6d likely 8d', 'task wires takes 3d..6d likely 4d'),
  'schedule/out-of-order': {
    wrong: `plan house "House"
  start 2027-05-03
task board takes 4d
task paint takes 2d after board
progress 2027-05-07
  board finished 2027-05-06
  paint started 2027-05-05
`,
    right: `plan house "House"
  start 2027-05-03
task board takes 4d
task paint takes 2d after board
progress 2027-05-07
  board finished 2027-05-04
  paint started 2027-05-05
`,
  },
  'accept/unused': {
    wrong: 'trade framing crew of 3\ntask walls-up takes 3d by framing\n  accept work/no-trade "The owner does it"\n',
    right: 'trade framing crew of 3\ntask walls-up takes 3d by framing\n',
  },
  'accept/expired': {
    wrong: `trade framing crew of 3
task clean-up takes 1d
  accept work/no-trade "Nobody hired yet" until 2027-04-30
task walls-up takes 3d by framing
progress 2027-05-07
  walls-up started 2027-05-05
`,
    right: `trade framing crew of 3
task clean-up takes 1d
  accept work/no-trade "Nobody hired yet" until 2027-05-31
task walls-up takes 3d by framing
progress 2027-05-07
  walls-up started 2027-05-05
`,
  },
  'accept/no-reason': {
    wrong: 'trade framing crew of 3\ntask walls-up takes 3d by framing\ntask clean-up takes 1d\n  accept work/no-trade\n',
    right:
      'trade framing crew of 3\ntask walls-up takes 3d by framing\ntask clean-up takes 1d\n  accept work/no-trade "The owner does it"\n',
  },
  'accept/unscoped': {
    wrong:
      'trade framing crew of 3\ntask walls-up takes 3d by framing\ntask clean-up takes 1d\naccept work/no-trade "The owner does it"\n',
    right:
      'trade framing crew of 3\ntask walls-up takes 3d by framing\ntask clean-up takes 1d\naccept work/no-trade for clean-up "The owner does it"\n',
  },
};
