// What one analysis did, counted: the guard against doing work for what did not change. Counters, not clocks.
export interface Work {
  linesParsed: number;
  recordsChecked: number;
  elementsComputed: number;
  linesMeasured: number;
  tasksTimed: number;
  networkBuilt: number;
  messagesMade: number;
  filesPublished: number;
}

export function noWork(): Work {
  return {
    linesParsed: 0,
    recordsChecked: 0,
    elementsComputed: 0,
    linesMeasured: 0,
    tasksTimed: 0,
    networkBuilt: 0,
    messagesMade: 0,
    filesPublished: 0,
  };
}
