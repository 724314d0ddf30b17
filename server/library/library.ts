// DOOR: the built-in library as texts, in the order in which a house is understood. No logic: the pipeline is handed them.
import assembliesFloors from './assemblies/floors.screed';
import assembliesMetric from './assemblies/metric.screed';
import assembliesPartitions from './assemblies/partitions.screed';
import assembliesRoofs from './assemblies/roofs.screed';
import assembliesWalls from './assemblies/walls.screed';
import calculationsAirAndWater from './calculations/air-and-water.screed';
import calculationsElectric from './calculations/electric.screed';
import climates from './climates.screed';
import conventions from './conventions.screed';
import elements from './elements.screed';
import holidaysBritain from './holidays/britain-and-ireland.screed';
import holidaysCanada from './holidays/canada.screed';
import holidaysGermany from './holidays/germany.screed';
import holidaysNordic from './holidays/nordic.screed';
import holidaysStates from './holidays/united-states.screed';
import inspectionsFinals from './inspections/finals.screed';
import inspectionsFrame from './inspections/frame.screed';
import inspectionsGround from './inspections/ground.screed';
import materialsCabinets from './materials/cabinets.screed';
import materialsConcrete from './materials/concrete.screed';
import materialsConnectors from './materials/connectors.screed';
import materialsCoverings from './materials/coverings.screed';
import materialsDevices from './materials/devices.screed';
import materialsDucts from './materials/ducts.screed';
import materialsFinishes from './materials/finishes.screed';
import materialsFixtures from './materials/fixtures.screed';
import materialsFloors from './materials/floors.screed';
import materialsForms from './materials/forms.screed';
import materialsGround from './materials/ground.screed';
import materialsHardware from './materials/hardware.screed';
import materialsInside from './materials/inside.screed';
import materialsInsulation from './materials/insulation.screed';
import materialsItems from './materials/items.screed';
import materialsLumber from './materials/lumber.screed';
import materialsOutside from './materials/outside.screed';
import materialsPanels from './materials/panels.screed';
import materialsPipes from './materials/pipes.screed';
import materialsRoofing from './materials/roofing.screed';
import materialsServices from './materials/services.screed';
import materialsSheets from './materials/sheets.screed';
import materialsTrim from './materials/trim.screed';
import materialsWiring from './materials/wiring.screed';
import materialsYard from './materials/yard.screed';
import minimumsAlarms from './minimums/alarms.screed';
import minimumsAtticAndCrawl from './minimums/attic-and-crawl.screed';
import minimumsBaths from './minimums/baths.screed';
import minimumsDesigners from './minimums/designers.screed';
import minimumsDrains from './minimums/drains.screed';
import minimumsEscape from './minimums/escape.screed';
import minimumsFoundation from './minimums/foundation.screed';
import minimumsGlass from './minimums/glass.screed';
import minimumsInsulation2018 from './minimums/insulation-2018.screed';
import minimumsInsulation2021 from './minimums/insulation-2021.screed';
import minimumsLightAndAir from './minimums/light-and-air.screed';
import minimumsMassWalls from './minimums/mass-walls.screed';
import minimumsRooms from './minimums/rooms.screed';
import minimumsServices from './minimums/services.screed';
import minimumsStairs from './minimums/stairs.screed';
import needsGround from './needs/ground.screed';
import needsInside from './needs/inside.screed';
import needsShell from './needs/shell.screed';
import safetyAir from './safety/air.screed';
import safetyGround from './safety/ground.screed';
import safetyHeights from './safety/heights.screed';
import sequenceBackfill from './sequence/backfill.screed';
import sequenceBones from './sequence/bones.screed';
import sequenceCloseIn from './sequence/close-in.screed';
import sequenceCloseOut from './sequence/close-out.screed';
import sequenceDryIn from './sequence/dry-in.screed';
import sequenceFinishes from './sequence/finishes.screed';
import sequenceFootings from './sequence/footings.screed';
import sequenceFraming from './sequence/framing.screed';
import sequenceOutside from './sequence/outside.screed';
import sequencePanels from './sequence/panels.screed';
import sequenceRoughIn from './sequence/rough-in.screed';
import sequenceSite from './sequence/site.screed';
import sequenceSlab from './sequence/slab.screed';
import sequenceTile from './sequence/tile.screed';
import states from './states.screed';
import workCare from './work/care.screed';
import workCloseIn from './work/close-in.screed';
import workDeck from './work/deck.screed';
import workExisting from './work/existing.screed';
import workFinish from './work/finish.screed';
import workFit from './work/fit.screed';
import workFoundation from './work/foundation.screed';
import workFrame from './work/frame.screed';
import workGround from './work/ground.screed';
import workGuards from './work/guards.screed';
import workHandover from './work/handover.screed';
import workPanels from './work/panels.screed';
import workPapers from './work/papers.screed';
import workServices from './work/services.screed';
import workShell from './work/shell.screed';

export interface LibraryText {
  /** Below the library's folder: 'work/shell.screed'. */
  readonly path: string;
  readonly text: string;
}

export const libraryTexts: readonly LibraryText[] = [
  { path: 'materials/cabinets.screed', text: materialsCabinets },
  { path: 'materials/concrete.screed', text: materialsConcrete },
  { path: 'materials/devices.screed', text: materialsDevices },
  { path: 'materials/fixtures.screed', text: materialsFixtures },
  { path: 'materials/floors.screed', text: materialsFloors },
  { path: 'materials/ground.screed', text: materialsGround },
  { path: 'materials/inside.screed', text: materialsInside },
  { path: 'materials/insulation.screed', text: materialsInsulation },
  { path: 'materials/items.screed', text: materialsItems },
  { path: 'materials/lumber.screed', text: materialsLumber },
  { path: 'materials/outside.screed', text: materialsOutside },
  { path: 'materials/panels.screed', text: materialsPanels },
  { path: 'materials/roofing.screed', text: materialsRoofing },
  { path: 'materials/services.screed', text: materialsServices },
  { path: 'materials/sheets.screed', text: materialsSheets },
  { path: 'materials/trim.screed', text: materialsTrim },
  { path: 'materials/connectors.screed', text: materialsConnectors },
  { path: 'materials/coverings.screed', text: materialsCoverings },
  { path: 'materials/ducts.screed', text: materialsDucts },
  { path: 'materials/finishes.screed', text: materialsFinishes },
  { path: 'materials/forms.screed', text: materialsForms },
  { path: 'materials/hardware.screed', text: materialsHardware },
  { path: 'materials/pipes.screed', text: materialsPipes },
  { path: 'materials/wiring.screed', text: materialsWiring },
  { path: 'materials/yard.screed', text: materialsYard },
  { path: 'conventions.screed', text: conventions },
  { path: 'assemblies/floors.screed', text: assembliesFloors },
  { path: 'assemblies/metric.screed', text: assembliesMetric },
  { path: 'assemblies/partitions.screed', text: assembliesPartitions },
  { path: 'assemblies/roofs.screed', text: assembliesRoofs },
  { path: 'assemblies/walls.screed', text: assembliesWalls },
  { path: 'work/care.screed', text: workCare },
  { path: 'work/close-in.screed', text: workCloseIn },
  { path: 'work/deck.screed', text: workDeck },
  { path: 'work/finish.screed', text: workFinish },
  { path: 'work/fit.screed', text: workFit },
  { path: 'work/existing.screed', text: workExisting },
  { path: 'work/foundation.screed', text: workFoundation },
  { path: 'work/frame.screed', text: workFrame },
  { path: 'work/ground.screed', text: workGround },
  { path: 'work/guards.screed', text: workGuards },
  { path: 'work/handover.screed', text: workHandover },
  { path: 'work/panels.screed', text: workPanels },
  { path: 'work/papers.screed', text: workPapers },
  { path: 'work/services.screed', text: workServices },
  { path: 'work/shell.screed', text: workShell },
  { path: 'elements.screed', text: elements },
  { path: 'states.screed', text: states },
  { path: 'needs/ground.screed', text: needsGround },
  { path: 'needs/inside.screed', text: needsInside },
  { path: 'needs/shell.screed', text: needsShell },
  { path: 'sequence/backfill.screed', text: sequenceBackfill },
  { path: 'sequence/bones.screed', text: sequenceBones },
  { path: 'sequence/close-in.screed', text: sequenceCloseIn },
  { path: 'sequence/close-out.screed', text: sequenceCloseOut },
  { path: 'sequence/dry-in.screed', text: sequenceDryIn },
  { path: 'sequence/finishes.screed', text: sequenceFinishes },
  { path: 'sequence/footings.screed', text: sequenceFootings },
  { path: 'sequence/framing.screed', text: sequenceFraming },
  { path: 'sequence/outside.screed', text: sequenceOutside },
  { path: 'sequence/panels.screed', text: sequencePanels },
  { path: 'sequence/rough-in.screed', text: sequenceRoughIn },
  { path: 'sequence/site.screed', text: sequenceSite },
  { path: 'sequence/slab.screed', text: sequenceSlab },
  { path: 'sequence/tile.screed', text: sequenceTile },
  { path: 'inspections/finals.screed', text: inspectionsFinals },
  { path: 'inspections/frame.screed', text: inspectionsFrame },
  { path: 'inspections/ground.screed', text: inspectionsGround },
  { path: 'minimums/rooms.screed', text: minimumsRooms },
  { path: 'minimums/light-and-air.screed', text: minimumsLightAndAir },
  { path: 'minimums/escape.screed', text: minimumsEscape },
  { path: 'minimums/stairs.screed', text: minimumsStairs },
  { path: 'minimums/baths.screed', text: minimumsBaths },
  { path: 'calculations/electric.screed', text: calculationsElectric },
  { path: 'calculations/air-and-water.screed', text: calculationsAirAndWater },
  { path: 'minimums/alarms.screed', text: minimumsAlarms },
  { path: 'minimums/foundation.screed', text: minimumsFoundation },
  { path: 'minimums/attic-and-crawl.screed', text: minimumsAtticAndCrawl },
  { path: 'minimums/insulation-2018.screed', text: minimumsInsulation2018 },
  { path: 'minimums/insulation-2021.screed', text: minimumsInsulation2021 },
  { path: 'minimums/mass-walls.screed', text: minimumsMassWalls },
  { path: 'minimums/glass.screed', text: minimumsGlass },
  { path: 'minimums/drains.screed', text: minimumsDrains },
  { path: 'minimums/services.screed', text: minimumsServices },
  { path: 'minimums/designers.screed', text: minimumsDesigners },
  { path: 'safety/air.screed', text: safetyAir },
  { path: 'safety/ground.screed', text: safetyGround },
  { path: 'safety/heights.screed', text: safetyHeights },
  { path: 'climates.screed', text: climates },
  { path: 'holidays/united-states.screed', text: holidaysStates },
  { path: 'holidays/canada.screed', text: holidaysCanada },
  { path: 'holidays/britain-and-ireland.screed', text: holidaysBritain },
  { path: 'holidays/germany.screed', text: holidaysGermany },
  { path: 'holidays/nordic.screed', text: holidaysNordic },
];
