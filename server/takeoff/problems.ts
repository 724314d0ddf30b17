// What the take-off could not count, and why: one sort of finding for each.
import { findingSort } from '#kit/finding';
import { formatQuantity } from '#kit/units';

const length = (value: number): string => formatQuantity({ value, dimension: 'length' }, 'feet');

export const outlineOpen = findingSort<[what: string, short: number, way: string]>({
  code: 'takeoff/outline-open',
  severity: 'error',
  say: (what, short, way) =>
    `The sides of "${what}" do not close: the walk ends ${length(short)} short of where it began, to the ${way}. Nothing of it can be counted; correct a side.`,
});

export const outlineEmpty = findingSort<[what: string]>({
  code: 'takeoff/outline-empty',
  severity: 'error',
  say: (what) =>
    `The sides of "${what}" enclose no floor, so nothing of it can be counted. Give two sizes, or walk round at least four sides.`,
});

export const outlineCrosses = findingSort<[what: string]>({
  code: 'takeoff/outline-crosses',
  severity: 'error',
  say: (what) =>
    `The sides of "${what}" cross or touch one another, so it has no clear inside and nothing of it can be counted. Correct a side.`,
});

export const outlineAskew = findingSort<[what: string, from: number, to: number, off: number]>({
  code: 'takeoff/outline-askew',
  severity: 'warning',
  say: (what, from, to, off) =>
    `From corner ${from} to corner ${to} of "${what}" the side is ${length(off)} out of square. It is counted as given; a slip of a number looks like this. Correct the corner, or accept it where the wall really stands so.`,
});

export const bayMisfit = findingSort<[what: string, side: string]>({
  code: 'takeoff/bay-misfit',
  severity: 'error',
  say: (what, side) =>
    `The bay in the ${side} of "${what}" fits on no wall there, or its sides meet before its front, so it is not counted. "at" is how far it begins from the west or south end; twice its depth at 45 degrees must be less than its width.`,
});

export const bayWithoutRoof = findingSort<[level: string]>({
  code: 'takeoff/bay-without-roof',
  severity: 'note',
  say: (level) =>
    `No roof covers the bays of "${level}": that of the house is counted without them. Give them one: "roof bay-top over bays of ${level}" with "shape hip 6:12"; or accept this where the eaves reach out over them, or they go on above.`,
});

export const slantedTrusses = findingSort<[what: string]>({
  code: 'takeoff/slanted-trusses',
  severity: 'note',
  say: (what) =>
    `The roof "${what}" has slanted sides, over which trusses are cut and hung as their maker lays them out: none is counted. Order from that layout, or frame it of rafters.`,
});

export const outlineApart = findingSort<[what: string]>({
  code: 'takeoff/outline-apart',
  severity: 'error',
  say: (what) =>
    `The rectangles of "${what}" make no single outline: pieces lie apart or meet in a corner alone, a hole is left, or nothing is. Nothing of it can be counted; look at the sizes and places.`,
});

export const turnMisfit = findingSort<[what: string, risers: number]>({
  code: 'takeoff/turn-misfit',
  severity: 'warning',
  say: (what, risers) =>
    `The turns of "${what}" do not fit its ${risers} risers, or one is neither a landing nor winders, so the stair is not counted. Each turn stands after a number of risers from the foot, at least one on; so many winders take one riser fewer: "turn after 7, landing 36" x 36"" or "turn after 6, 3 winders".`,
});

export const heightMissing = findingSort<[what: string]>({
  code: 'takeoff/height-missing',
  severity: 'note',
  say: (what) => `"${what}" has no height, so its walls are not counted. Give its level a height.`,
});

export const lengthMissing = findingSort<[what: string]>({
  code: 'takeoff/length-missing',
  severity: 'note',
  say: (what) => `Nothing says how long "${what}" is, so it is not counted. Say which level it is under, or give a length.`,
});

export const spacingMissing = findingSort<[what: string]>({
  code: 'takeoff/spacing-missing',
  severity: 'note',
  say: (what) => `"${what}" has no spacing, so its pieces are not counted. Add "at 16\\" oc", as the drawing says.`,
});

export const pitchMissing = findingSort<[what: string]>({
  code: 'takeoff/pitch-missing',
  severity: 'note',
  say: (what) => `The roof "${what}" has no pitch, so its surface is not known. Add one to its shape: "shape gable 6:12".`,
});

export const slopeAcross = findingSort<[what: string, low: string, high: string]>({
  code: 'takeoff/slope-across',
  severity: 'warning',
  say: (what, low, high) =>
    `The ceiling of "${what}" is low in the ${low} and high in the ${high}, which do not lie across from each other, so it is counted flat. Name the side across, or the middle.`,
});

export const vaultHeight = findingSort<[what: string]>({
  code: 'takeoff/vault-height',
  severity: 'note',
  say: (what) =>
    `The ceiling of "${what}" goes up with the roof, and nothing says how high its walls go: they are counted to the plates, without the board, paint and insulation above. Give its heights, such as "sloped 8' in west, 13' in middle".`,
});

export const levelApart = findingSort<[what: string, below: string]>({
  code: 'takeoff/level-apart',
  severity: 'warning',
  say: (what, below) =>
    `"${what}" is placed clear of "${below}", which it stands on, so nothing of its overhang is counted. "at" is the distance from south-west corner to south-west corner, east, then north.`,
});

export const roofUnderStorey = findingSort<[what: string, level: string, upper: string]>({
  code: 'takeoff/roof-under-storey',
  severity: 'warning',
  say: (what, level, upper) =>
    `The roof "${what}" is counted over all of "${level}", though "${upper}" stands on it: too much is bought. Say that it is "beside" the storey, or give each roof its "size".`,
});

export const runsIntoNothing = findingSort<[what: string]>({
  code: 'takeoff/runs-into-nothing',
  severity: 'warning',
  say: (what) =>
    `Where the roof "${what}" meets the slope that it runs into is not known, so it is not counted. It needs that roof with a pitch, a shape of its own (gable, or hip with its hips meeting before the other slope, or for a dormer also shed, flatter than the other), and a size along the wall by out from it, or its dormer.`,
});

export const roofAboveRidge = findingSort<[what: string, main: string]>({
  code: 'takeoff/roof-above-ridge',
  severity: 'warning',
  say: (what, main) =>
    `"${what}" rises above the ridge of "${main}" that it runs into, so where it ends is not counted. Make it lower, narrower or flatter.`,
});

export const overhangsMeet = findingSort<[what: string]>({
  code: 'takeoff/overhangs-meet',
  severity: 'warning',
  say: (what) =>
    `The overhangs of the roof "${what}" meet across a notch of the outline, so its surface is not counted. Make them shorter, or give each part a roof of its own with "size".`,
});

export const ridgesSideBySide = findingSort<[what: string]>({
  code: 'takeoff/ridges-side-by-side',
  severity: 'note',
  say: (what) =>
    `Under the roof "${what}" the outline steps back beside a ridge, so two ridges lie side by side at different heights; a small hip between them is counted. Look whether that is what the drawing shows; a roof that runs straight over the step is given with "size".`,
});

export const trussesMeet = findingSort<[what: string]>({
  code: 'takeoff/trusses-meet',
  severity: 'note',
  say: (what) =>
    `Parts of the roof "${what}" run into each other. Its trusses are counted by the spacing of each part, valley frames among them; girders and which is which are for the truss maker's layout. Order from that layout.`,
});

export const partitionsMissing = findingSort<[what: string]>({
  code: 'takeoff/partitions-missing',
  severity: 'note',
  say: (what) =>
    `The inside walls of "${what}" have no length: its rooms are not placed. Place them with "at", or give the length: "partitions int-2x4, 86' long".`,
});

export const depthMissing = findingSort<[what: string]>({
  code: 'takeoff/depth-missing',
  severity: 'note',
  say: (what) => `Nothing says how thick "${what}" lies, so its volume is not counted. Give its thickness, such as 4", or its R.`,
});

export const sizeMissing = findingSort<[what: string, lacks: string]>({
  code: 'takeoff/size-missing',
  severity: 'note',
  say: (what, lacks) => `"${what}" lacks ${lacks}, so it is not counted.`,
});

export const slopeMissing = findingSort<[what: string, deep: number]>({
  code: 'takeoff/slope-missing',
  severity: 'note',
  say: (what, deep) =>
    `Cave-in: "${what}" is dug ${length(deep)} deep and nothing says how far its sides slope, so upright sides are counted. From 5 feet down they are sloped, shored or shielded; a competent person decides, local rules govern. Give the soil of the site, or a slope.`,
  source: '29 CFR 1926.652(a)(1)',
});

export const goodsOpen = findingSort<[work: string, choices: readonly string[]]>({
  code: 'takeoff/goods-open',
  severity: 'note',
  say: (work, choices) =>
    `"${work}" may install ${choices.slice(0, 3).join(', ')}${choices.length > 3 ? ` and ${choices.length - 3} more` : ''}, and nothing says which, so no goods are counted. Name them where they are laid.`,
});
