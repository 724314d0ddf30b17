// The checks, in the order that reads best. One file each, below rules/; the path is the code the user sees.
import type { Check } from './check.ts';
import { beforeStart } from './rules/dates/before-start.ts';
import { deadline } from './rules/dates/deadline.ts';
import { laterThanPlanned } from './rules/dates/later-than-planned.ts';
import { mustStartCheck } from './rules/dates/must-start.ts';
import { noHolidays } from './rules/dates/no-holidays.ts';
import { onHoliday } from './rules/dates/on-holiday.ts';
import { pastTarget } from './rules/dates/past-target.ts';
import { tooCold } from './rules/dates/too-cold.ts';
import { tooWet } from './rules/dates/too-wet.ts';
import { tooWindy } from './rules/dates/too-windy.ts';
import { afterClosing } from './rules/deliveries/after-closing.ts';
import { beforeInspection } from './rules/deliveries/before-inspection.ts';
import { closedDay } from './rules/deliveries/closed-day.ts';
import { holdsUp } from './rules/deliveries/holds-up.ts';
import { liesTooLong } from './rules/deliveries/lies-too-long.ts';
import { measuredTooSoon } from './rules/deliveries/measured-too-soon.ts';
import { noPlaceYet } from './rules/deliveries/no-place-yet.ts';
import { noRoom } from './rules/deliveries/no-room.ts';
import { notBrought } from './rules/deliveries/not-brought.ts';
import { orderByPassed } from './rules/deliveries/order-by-passed.ts';
import { tooLittle } from './rules/deliveries/too-little.ts';
import { notBeside } from './rules/doors/not-beside.ts';
import { countsNothingCheck } from './rules/goods/counts-nothing.ts';
import { oneCoat } from './rules/goods/one-coat.ts';
import { oneR } from './rules/goods/one-r.ts';
import { shortLoadCheck } from './rules/goods/short-load.ts';
import { tooMuchSo } from './rules/goods/too-much-so.ts';
import { covered } from './rules/inspections/covered.ts';
import { notPlanned } from './rules/inspections/not-planned.ts';
import { nothingToSee } from './rules/inspections/nothing-to-see.ts';
import { tooSoon } from './rules/inspections/too-soon.ts';
import { doesNotClose } from './rules/measures/does-not-close.ts';
import { bidWithoutScope } from './rules/money/bid-without-scope.ts';
import { onePriceForLengths } from './rules/money/one-price-for-lengths.ts';
import { priceMissing } from './rules/money/price-missing.ts';
import { rateMissing } from './rules/money/rate-missing.ts';
import { twoPrices } from './rules/money/two-prices.ts';
import { unknown } from './rules/names/unknown.ts';
import { unused } from './rules/names/unused.ts';
import { insideWall } from './rules/openings/inside-wall.ts';
import { roughTooSmall } from './rules/openings/rough-too-small.ts';
import { tallerThanWall } from './rules/openings/taller-than-wall.ts';
import { widerThanWall } from './rules/openings/wider-than-wall.ts';
import { afterItsDay } from './rules/progress/after-its-day.ts';
import { endsFirst } from './rules/progress/ends-first.ts';
import { noStart } from './rules/progress/no-start.ts';
import { notClosed } from './rules/progress/not-closed.ts';
import { areaBalance } from './rules/rooms/area-balance.ts';
import { gap } from './rules/rooms/gap.ts';
import { noWayIn } from './rules/rooms/no-way-in.ts';
import { outsideLevel } from './rules/rooms/outside-level.ts';
import { overlap } from './rules/rooms/overlap.ts';
import { looseEnd } from './rules/schedule/loose-end.ts';
import { redundantLink } from './rules/schedule/redundant-link.ts';
import { stackedTrades } from './rules/schedule/stacked-trades.ts';
import { standsCheck } from './rules/schedule/stands.ts';
import { workingTime } from './rules/waits/working-time.ts';
import { dewPoint } from './rules/walls/dew-point.ts';
import { thickness } from './rules/walls/thickness.ts';
import { doneTwice } from './rules/work/done-twice.ts';
import { insuranceEnds } from './rules/work/insurance-ends.ts';
import { noTrade } from './rules/work/no-trade.ts';
import { nobodyDoesIt } from './rules/work/nobody-does-it.ts';
import { runsOut } from './rules/work/runs-out.ts';
import { stateMilestone } from './rules/work/state-milestone.ts';
import { twoTakeAll } from './rules/work/two-take-all.ts';

export const checks: readonly Check[] = [
  // Names and drawings.
  unknown,
  unused,
  doesNotClose,
  thickness,
  outsideLevel,
  overlap,
  gap,
  areaBalance,
  noWayIn,
  widerThanWall,
  tallerThanWall,
  roughTooSmall,
  insideWall,
  notBeside,
  dewPoint,
  // Who does what.
  nobodyDoesIt,
  doneTwice,
  twoTakeAll,
  noTrade,
  insuranceEnds,
  runsOut,
  stateMilestone,
  nothingToSee,
  tooSoon,
  covered,
  notPlanned,
  // When.
  looseEnd,
  redundantLink,
  stackedTrades,
  standsCheck,
  workingTime,
  beforeInspection,
  afterClosing,
  orderByPassed,
  holdsUp,
  closedDay,
  liesTooLong,
  noPlaceYet,
  measuredTooSoon,
  noRoom,
  notBrought,
  tooLittle,
  tooMuchSo,
  shortLoadCheck,
  countsNothingCheck,
  oneCoat,
  oneR,
  beforeStart,
  noHolidays,
  deadline,
  mustStartCheck,
  tooCold,
  tooWet,
  tooWindy,
  onHoliday,
  pastTarget,
  laterThanPlanned,
  // What has happened.
  afterItsDay,
  endsFirst,
  noStart,
  notClosed,
  // For how much.
  priceMissing,
  onePriceForLengths,
  rateMissing,
  twoPrices,
  bidWithoutScope,
];

const gatheringCodes: ReadonlySet<string> = new Set(checks.flatMap(({ code, gathers }) => (gathers === true ? [code] : [])));

/** What many things lack when one thing that they stand on does, and a name that many use. */
const LACKS = /^(?:names\/unknown|takeoff\/[a-z]+-missing|schedule\/no-duration)$/;

/** Whether many findings of a code are told as one: those of the library’s rows always are. */
export function gathers(code: string): boolean {
  return LACKS.test(code) || /^(?:sequence|minimum|missing|safety)\//.test(code) || gatheringCodes.has(code);
}
