/** Every result that has a working: its name without its place in a list. The words of each stand in the text package. */
export const workingCodes = [
  'gravity.neededLevel', 'gravity.shortfall', 'gravity.shortfallWithMargin', 'lowSpots.volumeToSill', 'lowSpots.volumeToRim',
  'existingDrains.backedUpVolume', 'existingDrains.blindLength', 'peaks.flow', 'gutters.capacity', 'gutters.leaderCapacity', 'gutters.demand',
  'gutters.overflow', 'roofLines.flow', 'roofLines.standingLevel', 'roofLines.volume', 'grates.capacity', 'grates.flow', 'channels.flow',
  'channels.depthFreeFrictionless', 'channels.depthFree', 'channels.depth', 'channels.share', 'underdrains.inflow', 'pipes.slope', 'pipes.fullFlow',
  'pipes.fullVelocity', 'pipes.designFlow', 'pipes.share', 'pipes.depthRatio', 'pipes.velocity', 'pipes.tractiveStress', 'swales.flow',
  'swales.depth', 'swales.velocity', 'swales.topWidth', 'swales.share', 'basins.workingVolume', 'basins.worstStartsPerHour', 'basins.aloneRunTime',
  'basins.upliftAtWaterTable', 'basins.flotationAtWaterTable', 'basins.flotationAtGrade', 'pumps.equivalentLength', 'pumps.dutyAtOff.staticHead',
  'pumps.dutyAtOff.flow', 'pumps.dutyAtOff.head', 'pumps.dutyAtOff.velocity', 'pumps.dutyAtOn.staticHead', 'pumps.dutyAtOn.flow',
  'pumps.dutyAtOn.head', 'pumps.dutyAtOn.velocity', 'pumps.lineVolume', 'pumps.runBack', 'pumps.runBackShare', 'pumps.weepFlow', 'pumps.weepShare',
  'outlets.pitVolume', 'outlets.lineVolume', 'outlets.exitFlow', 'outlets.exitVelocity', 'dryWells.store', 'dryWells.soakage', 'dryWells.emptyTime',
  'wells.highestLevel', 'wells.soaked', 'wells.overflowed', 'family.maxLevel', 'family.minutesOverSill', 'freeboards.withSystem',
  'freeboards.withoutSystem', 'freeboards.offTwin', 'freeboards.onTwin', 'freeboards.lower', 'freeboards.upper', 'freeboards.minutesOverSill',
  'freeboards.minutesOverSillWithoutSystem', 'storm.maxPond', 'storm.starts', 'storm.runTime', 'recorded.levels.maxLevel',
  'recorded.freeboards.withSystem', 'recorded.freeboards.withoutSystem', 'recorded.freeboards.offTwin', 'recorded.freeboards.onTwin',
  'recorded.freeboards.minutesOverSill', 'recorded.freeboards.minutesOverSillWithoutSystem', 'recorded.starts', 'recorded.runTime',
  'outage.longestSafe', 'outage.cases.worstFreeboard', 'outage.cases.fromPeak', 'whatIfs.maxLevels', 'whatIfs.outage', 'whatIfs.sills.freeboard',
  'whatIfs.sills.minutesOverSill', 'band.middle', 'band.ranking.low', 'band.ranking.high', 'band.ranking.swing', 'protection.powerOn.lower',
  'protection.powerOut.lower', 'protection.gutterOverflowing.lower', 'handDifferences.hand', 'handDifferences.store', 'handDifferences.pumpHead',
  'handDifferences.phase', 'handDifferences.response', 'handDifferences.coupled', 'quantities.amount',
] as const;

export type WorkingCode = (typeof workingCodes)[number];

/** Every meaning that a symbol of a formula can have. */
export const workingMeanings = [
  'allowance', 'area', 'backedUpAfter', 'backedUpVolume', 'bagYield', 'bandAbove', 'bandBelow', 'basinDiameter', 'basinWater', 'beddingDepth',
  'besideCylinder', 'betweenLevels', 'broughtUntilCrest', 'builtDepth', 'catchmentArea', 'channelBody', 'channelDepth', 'channelWidth',
  'checkValveLength', 'coefficient', 'coefficientOfSurface', 'collarVolume', 'collectorInvert', 'concreteDensity', 'conveyanceNeeded', 'counted',
  'criticalDepth', 'curveSlope', 'datasheetFlow', 'datasheetHead', 'depthAtEnd', 'depthFactor', 'depthInGroundWater', 'depthRatio', 'designFlow',
  'drainDiameter', 'emptyMass', 'equivalentLength', 'exitDiameter', 'filledVolume', 'fittingCount', 'fittingLength', 'floorLevel',
  'flowAtGreatestDepth', 'flowFromOneSide', 'flowOfInlet', 'flowOfUnderdrain', 'freeFall', 'freeboardAtHigh', 'freeboardAtLow', 'freeboardOfTwin',
  'freeboardWithCause', 'freeboardWithoutCause', 'frictionSlope', 'fullFlow', 'grateEdge', 'grateHead', 'grateOpening', 'grateOrificeCoefficient',
  'greatestDepth', 'groundWater', 'gutterAreaInMillimetres', 'gutterCapacity', 'gutterDemand', 'gutterDepth', 'gutterLimit', 'gutterWidth',
  'hand.hand', 'hand.phase', 'hand.pumpHead', 'hand.response', 'hand.store', 'hazenWilliamsC', 'highestLevel', 'hoseFlow', 'hydraulicRadius',
  'infiltrationRate', 'inflowPerLength', 'inletEdge', 'inletShare', 'innerDiameter', 'invertDown', 'invertUp', 'leaderCapacity', 'leaderCount',
  'leaderDiameter', 'leaderFullness', 'leastVolume', 'leftUntilCrest', 'length', 'lengthFactor', 'lidLevel', 'liftLevel', 'lineVolume',
  'lossCoefficients', 'meanRun', 'minimumFall', 'momentum', 'movedByInput', 'neededLevel', 'offLevel', 'onLevel', 'oneGallonPerMinute', 'oneHour',
  'openingHead', 'outageLength', 'outageStart', 'outletLevel', 'outletMargin', 'paverArea', 'peakIntensity', 'peakOntoLowSpot', 'pi', 'pipeDiameter',
  'pitArea', 'pumpFlow', 'pumpHead', 'rainDepth', 'rainDuration', 'rimLevel', 'roughness', 'runBack', 'runOutFlow', 'runs', 'secondsOverSill',
  'seepageConductivity', 'seepageDepth', 'seepageGradient', 'seepageHigh', 'seepageLow', 'seepageReach', 'seepageSides', 'shareBetweenPoints',
  'shareLeftOpen', 'shortfall', 'shutOffHead', 'sideSlope', 'sillLevel', 'slope', 'sodArea', 'stageArea', 'stageLevel', 'startsCounted', 'staticHead',
  'stoneDepth', 'storedAtCrest', 'surfaceAtCrest', 'surround', 'swaleDepth', 'swell', 'tailwater', 'thickness', 'trenchDepth', 'uplift', 'velocity',
  'voids', 'volumeBelowStage', 'wallForce', 'waste', 'waterDensity', 'weepDiameter', 'weepFlow', 'weirCoefficient', 'wellArea', 'wellBottom',
  'wellDepth', 'wellOverflow', 'wellPerimeter', 'wellSoaked', 'wellStoredAtCrest', 'wellThroughput', 'wettedAngle', 'wettedArea', 'wholeMinutes',
  'width', 'workingVolume',
] as const;

export type WorkingMeaning = (typeof workingMeanings)[number];
