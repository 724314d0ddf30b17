// The head of the big plan: the plan itself, who builds, what things are made of and what they cost (all invented), and
// the papers before the first cottage.

/** Kinds of work that take the whole street at once stand here; the rest is in each cottage. */
export function opening(): readonly string[] {
  return [...PLAN, ...TRADES, ...MADE_OF, ...prices(), ...MONEY, ...PAPERS];
}

const PLAN = `# Larkspur Street: a made-up street of cottages for measuring how fast an answer comes.
# Every person, firm, date and price is invented.

plan street "Larkspur Street"
  address      "Larkspur Street"
  permit       B-27-0500
  start        2027-04-05
  target       2027-06-18
  units        feet
  code         irc-2021
  zone         5A
  frost        30"
  workweek     mon-fri 8h
  holidays     US
  closed       2027-07-02..2027-07-06, 2027-11-26
  weather      mar 4d, apr 3d, may 2d, jun 1d, oct 1d, nov 3d, dec 4d
  contingency  10%
  tax          6.5% on materials
  currency     USD
  carrying     $310/week

let plate-height = 8'-1 1/8"
let outside-wall = 5 1/2"
`.split('\n');

const TRADES = `# ---- who builds ----

trade me          "Us"                 crew of 2 at $0/h
trade surveying   "Surveyor"           crew of 2 at $85/h
trade city        "Building inspector"
  sees    mon, wed, fri
trade excavation  "Digging"            crew of 2 at $65/h
  crews   2
  away    2027-05-31..2027-06-04
trade concrete    "Footings and walls" crew of 3 at $58/h
  crews   2
trade framing     "Framing"            crew of 4 at $52/h
  crews   3
  works   mon-thu 7:00-17:30
trade roofing     "Roof and gutters"   crew of 3 at $55/h
trade siding      "Siding"             crew of 2 at $50/h
  crews   2
trade plumbing    "Plumbing"           crew of 2 at $78/h
  crews   2
trade electrical  "Wiring"             crew of 2 at $74/h
  crews   2
trade hvac        "Heat and air"       crew of 2 at $76/h
trade insulation  "Insulation"         crew of 2 at $46/h
trade drywall     "Drywall"            crew of 3 at $48/h
  crews   2
trade tile        "Tile"               crew of 2 at $55/h
trade cabinets    "Cabinets and tops"  crew of 2 at $60/h
trade trim        "Doors and trim"     crew of 2 at $58/h
trade painting    "Paint"              crew of 2 at $44/h
  crews   2
trade flooring    "Floors"             crew of 2 at $46/h
trade cleaning    "Cleaning"           crew of 2 at $32/h

machine crane "Boom truck" at $185/h, at least 4h
`.split('\n');

const MADE_OF = `# ---- what things are made of: walls and lids from the room outwards, floors from the top down ----

assembly street-wall "Outside wall" for wall
  layer drywall 1/2"
  layer stud 2x6 at 16" oc, filled with r21-batt
  layer osb 7/16"
  layer housewrap
  layer lap-siding 8 1/4", 7" to the weather

assembly street-partition "Partition" for partition
  layer drywall 1/2"
  layer stud 2x4 at 16" oc
  layer drywall 1/2"

assembly street-wet-wall "Wet wall" for partition
  layer drywall 1/2"
  layer stud 2x6 at 16" oc
  layer drywall 1/2"

assembly street-floor "Floor over the crawl space" for floor
  layer subfloor 23/32", glued
  layer joist 2x10 at 16" oc, filled with r30-batt

assembly street-lid "Ceiling under the attic" for ceiling
  layer drywall 5/8"
  layer blown-cellulose R-60

window w-3050 "Casement" 3'-0" x 5'-0", casement, sill 24", U 0.28
  rough    3'-0 1/2" x 5'-0 1/2"
  clear    31" x 55"
window w-4040 "Slider over the sink" 4'-0" x 4'-0", slider, sill 42", U 0.30
window w-2630 "Awning" 2'-6" x 3'-0", awning, sill 48", U 0.28
door d-3068 "Outside door" 3'-0" x 6'-8", exterior, half-glass, U 0.28
door d-2868 "Inside door" 2'-8" x 6'-8"
door d-2668 "Narrow inside door" 2'-6" x 6'-8"
door d-5068 "Closet doors" 5'-0" x 6'-8", bifold
`.split('\n');

/** Goods and their invented prices. */
const PRICES: readonly (readonly [goods: string, price: string, from: string])[] = [
  ['concrete', '$168/cy', 'plant'],
  ['rebar #4', '$12.40/piece', 'yard'],
  ['drain-stone', '$46/cy', 'pit'],
  ['drain-pipe 4"', '$11.50/piece', 'yard'],
  ['anchor-bolt 1/2"', '$3.10 each', 'yard'],
  ['damp-proofing', '$58/bucket', 'yard'],
  ['sill-seal 5 1/2"', '$9.40/roll', 'yard'],
  ['sill-plate 2x6', '$17.80 each', 'yard'],
  ['stud 2x6', '$8.10 each', 'yard'],
  ['stud 2x4', '$4.60 each', 'yard'],
  ['plate 2x6', '$12.60 each', 'yard'],
  ['plate 2x4', '$7.90 each', 'yard'],
  ['header', '$18.20 each', 'yard'],
  ['joist 2x10', '$24.60 each', 'yard'],
  ['rim-board 2x10', '$23.90 each', 'yard'],
  ['subfloor 23/32"', '$38.50/sheet', 'yard'],
  ['subfloor-glue', '$6.90/tube', 'yard'],
  ['osb 7/16"', '$14.20/sheet', 'yard'],
  ['truss', '$6,180 lump', 'yard'],
  ['fascia-board', '$21 each', 'yard'],
  ['soffit-board', '$26/sheet', 'yard'],
  ['housewrap', '$165/roll', 'yard'],
  ['roof-underlay', '$140/roll', 'yard'],
  ['drip-edge', '$9.80/piece', 'yard'],
  ['standing-seam', '$465/square', 'yard'],
  ['ridge-cap', '$24/piece', 'yard'],
  ['flashing-tape', '$34/roll', 'yard'],
  ['lap-siding 8 1/4"', '$13.60/piece', 'yard'],
  ['r21-batt', '$72/bag', 'yard'],
  ['r30-batt', '$84/bag', 'yard'],
  ['blown-cellulose', '$17.50/bag', 'yard'],
  ['drywall 1/2"', '$14.80/sheet', 'yard'],
  ['drywall 5/8"', '$17.60/sheet', 'yard'],
  ['moisture-board 1/2"', '$18.90/sheet', 'yard'],
  ['moisture-board 5/8"', '$21.40/sheet', 'yard'],
  ['joint-compound', '$21/bucket', 'yard'],
  ['primer', '$28/gal', 'paint-shop'],
  ['paint', '$42/gal', 'paint-shop'],
  ['washable-paint', '$56/gal', 'paint-shop'],
  ['trim-paint', '$58/gal', 'paint-shop'],
  ['backer-board', '$16.50/sheet', 'yard'],
  ['tile-membrane', '$112/roll', 'yard'],
  ['porcelain-tile', '$64/box', 'yard'],
  ['grout', '$31/bag', 'yard'],
  ['sheet-vinyl', '$2.40/sf', 'yard'],
  ['base-cabinet', '$240/lf', 'millwork'],
  ['wall-cabinet', '$185/lf', 'millwork'],
  ['tall-cabinet', '$890 each', 'millwork'],
  ['counter-top', '$62/sf', 'millwork'],
  ['w-3050', '$612 each', 'millwork'],
  ['w-4040', '$540 each', 'millwork'],
  ['w-2630', '$398 each', 'millwork'],
  ['d-3068', '$685 each', 'millwork'],
  ['d-2868', '$196 each', 'millwork'],
  ['d-2668', '$192 each', 'millwork'],
  ['d-5068', '$264 each', 'millwork'],
];

function prices(): readonly string[] {
  return [
    '# ---- prices, all invented ----',
    '',
    'supplier yard       "Hollis Lumber"',
    'supplier plant      "County Ready-Mix"',
    'supplier pit        "Gravel Hill Stone"',
    'supplier millwork   "Sash and Door"',
    'supplier paint-shop "Corner Paint"',
    '',
    ...PRICES.map(([goods, price, from]) => `price ${goods.padEnd(22)} ${price.padEnd(14)} from ${from} on 2027-02-20`),
    'price plank                  $3.85 per sf laid from yard on 2027-02-20',
    '',
  ];
}

const MONEY = `# ---- money, all invented ----

firm rivers "Two Rivers Framing" does framing, siding
  insured   until 2029-12-31
firm ruiz   "Ruiz Plumbing"      does plumbing
  phone     "555-0155"
  insured   until 2029-02-28
firm volt   "Oak Street Electric" does electrical
  licensed  until 2029-06-30

money savings $92,000
loan bank $150,000 at 8.25%
  draw 50% at permit-issued
  draw 50% at co
`.split('\n');

const PAPERS = `# ---- before the ground is touched ----

phase papers "Papers" in order
  task survey        does survey-site by surveying costs $1,450
  task apply         does get-permit by me fee $2,380
  milestone permit-issued "Permit issued", good for 900 days
  task locate-call   "Call before you dig (811)" does call-before-dig by me
  task stakes        does stake-out by surveying after locate-call + 3d
  task hand-dig      does expose-lines by excavation
  task clear         does clear-and-strip by excavation
`.split('\n');
