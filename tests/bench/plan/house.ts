// One cottage of the big plan, without its work: level, rooms, foundation, roof. The rooms and the walls between them fill
// the shell of 28 by 32 feet exactly, as in the sample cottage; finishes and counts vary.
import type { Random } from './random.ts';

/** `c` is the cottage's name, in front of every name in it. */
export function house(c: string, number: number, random: Random): readonly string[] {
  const floor = random.pick(['plank', 'laminate', 'vinyl-plank']);
  const outlets = 6 + random.below(4);
  return `# ================ cottage ${number} ================

level ${c} "Cottage ${number}"
  footprint  28' x 32'
  height     plate-height
  walls      street-wall
  partitions street-partition
  floor      street-floor
  ceiling    street-lid
  see        "A-${number}"

# The dimension strings of the sheet, outside face of framing to outside face of framing.
measure ${c}.south outside-wall + 11'-1" + 16'-0" + outside-wall = 28'
measure ${c}.north 5 1/2" + 11'-2" + 3 1/2" + 5'-0" + 5 1/2" + 10'-2" + 5 1/2" = 28'
measure ${c}.west  5 1/2" + 14'-7" + 3 1/2" + 3'-5" + 3 1/2" + 12'-6" + 5 1/2" = 32'

room ${c}-kitchen "Kitchen ${number}" on ${c} at 5 1/2", 5 1/2"
  use      cooking
  size     11'-1" x 14'-7"
  open to  ${c}-living
  floor    ${floor}
  walls    paint
  ceiling  paint
  base     base-board 3 1/4"
  tile     ${28 + random.below(12)} sf porcelain-tile
  windows  1 w-4040 in south at 3'-6 1/2"
  doors    1 d-3068 in west at 11'-0"
  cabinets 15' base-cabinet, 11' wall-cabinet, 1 tall-cabinet
  counter  28 sf counter-top
  fixtures 1 kitchen-sink, 1 dishwasher, 1 range, 1 hood 250 cfm, 1 fridge
  devices  6 gfci-outlet, 4 outlet, 4 switch, 6 light

room ${c}-living "Living ${number}" on ${c} at 11'-6 1/2", 5 1/2"
  use      living
  size     16'-0" x 14'-7"
  open to  ${c}-kitchen
  finish   as ${c}-kitchen
  windows  2 w-3050 in south at 2'-6", 10'-6"
  windows  2 w-3050 in east at 2'-6", 8'-6"
  doors    1 d-3068 in south at 6'-6"
  devices  ${outlets + 1} outlet, 3 switch, 3 light

room ${c}-laundry "Laundry ${number}" on ${c} at 5 1/2", 15'-4"
  use      laundry
  size     5'-6" x 3'-5"
  floor    sheet-vinyl
  walls    paint
  ceiling  paint
  base     vinyl-base
  doors    1 d-5068 to ${c}-kitchen
  fixtures 1 washer-box, 1 dryer-vent
  devices  1 gfci-outlet, 1 outlet, 1 switch, 1 light

room ${c}-hall "Hall ${number}" on ${c} at 6'-3", 15'-4"
  use      passage
  size     14'-8" x 3'-5"
  finish   as ${c}-kitchen
  cased    3'-6" x 6'-8" to ${c}-living
  devices  2 outlet, 2 switch, 2 light, 1 smoke-co-alarm

room ${c}-utility "Utility ${number}" on ${c} at 21'-2 1/2", 15'-4"
  use      utility
  size     6'-4" x 3'-5"
  finish   as ${c}-laundry
  windows  1 w-2630 in east
  doors    1 d-2868 to ${c}-hall
  note     "Leave 30 inches clear in front of the panel"
  fixtures 1 water-heater 50 gal, 1 air-handler
  devices  1 panel 200 A, 1 gfci-outlet, 1 switch, 1 light

room ${c}-bed-1 "Bedroom 1 of ${number}" on ${c} at 5 1/2", 19'-0 1/2"
  use      sleeping
  size     11'-2" x 12'-6"
  floor    ${floor}
  walls    paint
  ceiling  paint
  base     base-board 3 1/4"
  windows  1 w-3050 in west at 4'-9", 1 w-3050 in north at 4'-1"
  doors    1 d-2868 to ${c}-hall
  devices  ${outlets} outlet, 2 switch, 2 light, 1 smoke-alarm

room ${c}-closet "Closet of bedroom 1 of ${number}" on ${c} at 11'-11", 27'-10"
  use      closet
  size     5'-0" x 3'-8 1/2"
  finish   as ${c}-bed-1
  doors    1 d-2668 to ${c}-bed-1
  devices  1 switch, 1 light

room ${c}-bath "Bath ${number}" on ${c} at 11'-11", 19'-0 1/2"
  use      bathing
  size     5'-0" x 8'-6"
  floor    porcelain-tile over tile-membrane
  walls    moisture-board 1/2", washable-paint
  ceiling  moisture-board 5/8", washable-paint
  base     tile-base
  wet      60 sf porcelain-tile over backer-board, tile-membrane
  doors    1 d-2668 to ${c}-hall
  note     "Backing for grab bars at 34 inches"
  fixtures 1 toilet, 1 vanity 30", 1 shower 60" x 32", 1 bath-fan 80 cfm
  devices  1 gfci-outlet, 3 switch, 2 light

room ${c}-bed-2 "Bedroom 2 of ${number}" on ${c} at 17'-4 1/2", 19'-0 1/2"
  use      sleeping
  size     10'-2" x 12'-6"
  finish   as ${c}-bed-1
  windows  1 w-3050 in north at 3'-7", 1 w-3050 in east at 4'-9"
  doors    1 d-2868 to ${c}-hall
  closet   6'-0" x 2'-0" in south, 1 d-5068
  devices  ${outlets} outlet, 2 switch, 2 light, 1 smoke-alarm

# Pipes stand in the wall between bath and bedroom 2, and it runs on to the north wall in one plane.
wall ${c}-wet-wall between ${c}-bath, ${c}-bed-2 of street-wet-wall
wall ${c}-wet-wall-end between ${c}-closet, ${c}-bed-2 of street-wet-wall

foundation ${c}-walls "Footing and stem walls" under ${c}
  footing       20" x 8", 2 #4
  wall          8" x 32", #4 at 48" oc
  bottom        32" below grade
  working-space 1'
  drain         4" in 12" gravel
  bolts         1/2" at 6' oc
  damp-proof    to grade
  see           "S-${number}"

roof ${c}-roof over ${c}
  shape    gable ${random.pick(['5:12', '6:12', '7:12'])}, ridge north-south
  overhang 18" eaves, 12" rakes
  framed   truss at 24" oc
  deck     osb 7/16"
  roofing  standing-seam over roof-underlay
  gutters  east, west
  leaders  4
  see      "A-${number + 100}"
`.split('\n');
}
