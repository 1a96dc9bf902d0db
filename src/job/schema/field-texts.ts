// Written by .config/write-field-texts.mjs from the doc comments beside it. Do not edit.

/** What each field of a job file means. Internal. */
export const FIELD_TEXTS: Readonly<Record<string, Readonly<Record<string, string>>>> =
  Object.freeze({
    JobDegreeDaysInput: {
      value: 'The number, 0 to 15 000.',
      unit: 'Degrees Celsius or Fahrenheit, times days.',
    },
    JobTemperatureInput: {
      value: 'The number: 0 to 60 in degrees C, 32 to 140 in degrees F.',
      unit: 'Degrees Celsius or Fahrenheit.',
    },
    JobFrostInput: {
      airIndex: 'Freezing index of the air to plan for.',
      surface:
        'Surface, for the share of that index it feels. Default: `concrete`, the nearest to pavers.',
      seasonDays: 'Length of the freezing season in days, more than 0 and at most 366.',
      meanAnnual: 'Mean temperature of the year, not below freezing.',
      soil: 'Soil under the base: `sandy` or `silt-clay`.',
      dryDensity: 'Dry density of that soil.',
      moisture: 'Water over dry mass of that soil, as a fraction, more than 0 and at most 1.',
      baseMoisture:
        'Water over dry mass of the base in place, as a fraction, more than 0 and at most 1.',
    },
    JobPlantInput: {
      plant: 'Kind of machine.',
      mass: 'Its mass; for a roller the mass on one drum.',
      plateArea: 'Area of the base plate that touches the ground; of a plate only.',
      drumWidth: 'Width of the drum; of a roller only.',
      fill: 'Fill that it compacts. Default: `granular`.',
    },
    JobOptimumInput: {
      stone: 'Id of the stone in `materials`.',
      optimumMoisture:
        'Optimum moisture of its laboratory test: water over dry mass, as a fraction 0 to 1.',
      moisture: 'Moisture on the day, as a fraction 0 to 1. Default: that of the material.',
    },
    JobStormInput: {
      depth: 'Depth of rain.',
      time: 'Time in which it falls.',
      coefficient:
        'Share of the rain that runs off the paving, 0 to 1. Default: 0.85, the upper end for brick.',
      inlet: 'Flow that the drain of each pavement takes. Default: it is not judged.',
    },
    JobGroundInput: {
      cbr: 'Bearing ratio of the subgrade in percent, more than 0 and at most 200. Optional.',
      frostGroup: 'Frost group of the subgrade. Optional.',
      frost: 'The winter to plan for, and the soil that freezes. Optional.',
      plant: 'The machine that compacts the lifts. Optional.',
      optimum: 'Stones with their optimum moisture, for the water of each lift. Optional.',
      storm: 'The storm that the drainage is planned for. Optional.',
    },
    JobInput: {
      $schema:
        'Address of the JSON Schema of a job file, for editors. It is not used in calculations. Optional.',
      version: 'Version of the file format: 1.',
      name: 'Name of the site.',
      stringHeight: 'Height of the string above finished grade.',
      stakeTolerance: 'Maximum distance of a stake out of line.',
      minimumFall: 'Minimum fall for drainage. Default: 2%, the published minimum.',
      edgeRestraintWidth: 'Width of the edge restraint outside the paving. Default: none.',
      workingRoom: 'Width of the dig beyond the base on open edges. Default: none.',
      setOutStep:
        'Step to which the sheet rounds up the distances for setting out the dig. Default: 1/4 in, metric 5 mm.',
      string: 'Weight and tension of the string, to work out its sag. Optional.',
      existingLevels: 'Spot heights of the existing surface. Optional.',
      levelling: 'The level as set up for the day: one set-up. Optional.',
      levelBook: 'The level book, as written on site. Optional.',
      materials: 'Materials, each described once.',
      stakes: 'Stakes, each listed once, 2 to 10 000.',
      pavements: 'Pavements, 1 to 50.',
      stringLines: 'Strings, 1 to 200.',
      oldPaving: 'Old paving to strip, up to 100. Optional.',
      utilities: 'Marked lines: pipes, cables, ducts. Up to 20. Optional.',
      trees: 'Trees near the dig. Up to 200. Optional.',
      excavation: "A competent person's findings on the ground. Optional.",
      soil: 'Soil to dig.',
      truck: 'Truck that hauls.',
      ground:
        'What is known of the ground: strength, frost, the machine, moisture, the storm. Optional.',
      rates:
        'How fast machine, hands, plate and trucks work, for the hours of each step. Optional.',
    },
    JobFixedLevelInput: {
      name: 'Name of the thing that cannot move, such as slab, sill or street. Default: its number.',
      x: 'Plan coordinate.',
      y: 'Plan coordinate.',
      elevation: 'Elevation; or give `levelled`.',
      levelled: 'Point of the level book that gives this level; or give `elevation`.',
      fixed: 'True if a plane must meet this level exactly. Default: false.',
    },
    JobGradeInput: {
      kind: 'Type of surface: a line of levels, a plane, or a surface warped between four corners.',
      levels:
        'Levels to meet: two or more for a line, three or more for a plane, four for a warped surface.',
      crossSlope:
        'Cross slope of a line: the slope square to it, + rising to the left. Default: level.',
    },
    JobBenchmarkInput: {
      name: 'Name of the mark. Optional.',
      elevation: 'Elevation; or give `levelled`.',
      levelled: 'Point of the level book that gives this level; or give `elevation`.',
    },
    JobClosingInput: {
      reading: 'Reading on the benchmark at the end of the day.',
      tolerance: 'Maximum difference from the backsight.',
    },
    JobLevellingInput: {
      benchmark: 'Mark from which heights are measured.',
      backsight: 'Reading on the benchmark.',
      rodLength: 'Longest reading on the rod. Optional.',
      closing: 'Check on the benchmark at the end of the day. Optional.',
    },
    JobLevelRowInput: {
      point: 'Name of the point the rod was held on.',
      back: 'Backsight: the first reading of a set-up. Optional.',
      intermediate: 'Intermediate sight. Optional.',
      fore: 'Foresight: the last reading of a set-up. Optional.',
      distance: 'Distance from the start, along the line of levels. Optional.',
    },
    JobMisclosureRuleInput: {
      k: 'Constant k of the rule.',
      per: 'Distance that counts as one in n. Default: n is the number of set-ups.',
    },
    JobLevelBookInput: {
      start: 'Elevation of the starting mark.',
      rows: 'Rows in the order they were read, 1 to 2000.',
      known: 'Known elevation of the closing mark. Optional.',
      allowable: 'Allowable misclosure; or give `rule`.',
      rule: 'Rule for the allowable misclosure; or give `allowable`.',
      adjustBy: 'Basis on which the misclosure is spread. Default: `set-ups`.',
    },
    JobPackInput: {
      name: 'Name of a pack, such as yard, bag or truck.',
      volume: 'Loose volume of a pack; or give `mass`.',
      mass: 'Mass of a pack; or give `volume`.',
      minimum: 'Minimum order, in packs. Default: none.',
    },
    JobPaverPackInput: {
      name: 'Name of a pack, such as band or pallet.',
      holds:
        'Pavers in the smallest pack; in a larger pack, the number of packs of the size before.',
    },
    JobLooseInput: {
      id: 'Short id for the layers to name, unique among the materials of the job.',
      name: 'Name on the order. Default: the id.',
      compactedDryDensity: 'Dry density, compacted in place.',
      compactedPerLoose: 'Compacted over loose volume, 0.5 to 1, from a trial strip.',
      moisture: 'Water over dry mass, as a fraction. Default: 0.',
      waste: 'Allowance added to the order, as a fraction. Default: 0.',
      pack: 'Pack in which it is sold. Optional.',
    },
    JobStoneInput: {
      id: 'Short id for the layers to name, unique among the materials of the job.',
      name: 'Name on the order. Default: the id.',
      compactedDryDensity: 'Dry density, compacted in place.',
      compactedPerLoose: 'Compacted over loose volume, 0.5 to 1, from a trial strip.',
      moisture: 'Water over dry mass, as a fraction. Default: 0.',
      waste: 'Allowance added to the order, as a fraction. Default: 0.',
      pack: 'Pack in which it is sold. Optional.',
      maxLift: 'Maximum compacted lift for the machine.',
    },
    JobSandInput: {
      id: 'Short id for the layers to name, unique among the materials of the job.',
      name: 'Name on the order. Default: the id.',
      compactedDryDensity: 'Dry density, compacted in place.',
      compactedPerLoose: 'Compacted over loose volume, 0.5 to 1, from a trial strip.',
      moisture: 'Water over dry mass, as a fraction. Default: 0.',
      waste: 'Allowance added to the order, as a fraction. Default: 0.',
      pack: 'Pack in which it is sold. Optional.',
      settlement:
        'Settlement of the bedding under the plate, from a trial: the screed and the pavers are set high by it. Default: none.',
    },
    JobPaverInput: {
      id: 'Short id for layers and borders to name, unique among the materials of the job.',
      name: 'Name on the order. Default: the id.',
      length: 'Length of one paver, without its joint.',
      width: 'Width of one paver, without its joint.',
      joint: 'Joint width.',
      breakage:
        'Allowance for cuts and breakage, as a fraction; with a pattern, for breakage alone. Default: 0.',
      pattern: 'Laying pattern, to count cut pavers. Optional.',
      axis: 'Direction of the long side of the pavers, counter-clockwise from the x axis. Needs `pattern`. Default: along the x axis.',
      reuse: 'Share of the off-cuts that are used, as a fraction. Needs `pattern`. Default: 0.',
      packs: 'Packs, from the smallest up, 1 to 5. Optional.',
    },
    JobMaterialsInput: {
      stones: 'Stones for base, sub-base and fill, 1 to 20.',
      sands: 'Sands for bedding, 1 to 20.',
      pavers: 'Pavers to count, 1 to 50. Default: none, and no pavers are counted.',
      fill: 'Id of the stone that fills low ground up to the subgrade. Default: the stone of the lowest layer.',
      jointSand: 'Joint sand. Optional.',
      edgeRestraint: 'Edge restraint. Optional.',
      geotextile: 'Geotextile under the base. Optional.',
    },
    JobSoilInput: {
      bankDensity: 'Bank density: in place, including water.',
      loosePerBank: 'Loose over bank volume, 0.9 to 3.',
      compactedPerBank: 'Compacted over bank volume, 0.4 to 2.',
    },
    JobTruckInput: {
      boxVolume: 'Volume of the box, filled level.',
      payload: 'Legal payload.',
    },
    JobEdgeInput: {
      along: 'Kind of edge: what is along it.',
      batter:
        'Slope of the side of the dig, run over rise, 0 (vertical) to 10; only for an open edge. Default: that of the pavement.',
      level: 'Level of the floor at a slab or building, or of the paving it meets. Optional.',
      footing:
        "Depth from finished grade at the edge to the underside of a building's footing, if known. Optional.",
    },
    JobLayerInput: {
      kind: 'Kind of layer.',
      name: 'Name the crew uses. Default: the kind.',
      thickness: 'Compacted thickness.',
      material:
        'Id of its stone, sand or paver in `materials`. Only a layer of pavers may leave it out.',
    },
    JobBorderInput: {
      course: 'Orientation of the pavers in the course.',
      corner: 'Corner joint of the course. Default: `butt`.',
      edges: 'Edges with the course, counted from 1. Default: every edge.',
      paver: 'Id of the paver of the course in `materials`. Default: the paver of the field.',
    },
    JobBetweenStringsInput: {
      from: 'Id of a string over the pavement.',
      to: 'Id of another string over the pavement.',
      spacing: 'Distance between rows of the table, square to the first string.',
    },
    SpotTableInput: {
      unit: 'Unit of all three numbers of every point.',
      points: 'Points as x, y and elevation, 3 to 100 000.',
    },
    SpotHeightInput: {
      x: 'Plan coordinate.',
      y: 'Plan coordinate.',
      z: 'Elevation.',
    },
    JobPavementInput: {
      id: 'Short id, unique in the job.',
      name: 'Name on the sheet. Default: the id.',
      use: 'Traffic: the use of the paving.',
      subgrade: 'Subgrade: the soil it is built on.',
      frost: 'True if the ground freezes below the base. Default: false.',
      layers: 'Layers from the top down, 1 to 20.',
      outline: 'Edge of the finished paving. In its arcs, `edge` counts from 1.',
      edges:
        'What is along each edge, in order: the outer edges first, then those of the holes. Edge 1 runs from the first point to the second. Write `null` for an edge that is not known yet: it is planned as open, with a warning. Default: no edge is known.',
      batter:
        'Slope of the sides of the dig along open edges, run over rise, 0 to 10. Default: vertical.',
      taperedBase:
        'True if the stone beyond the edge restraint tapers, from its top at the restraint to its foot at the outer edge of the base. Default: full thickness out to that edge.',
      existingAboveFinish:
        'Height of the existing surface above finished grade, negative if below. Default: level with it.',
      crossSlope: 'Fall square to the strings. Optional.',
      grade: 'Finished grade by levels that cannot move, instead of stake by stake. Optional.',
      border: 'A course of whole pavers along the edge. Optional.',
      finishedLevels: 'Spot heights of the finished surface. Optional.',
      betweenStrings: 'Two strings, for a table of depths between them. Optional.',
    },
    JobMachineInput: {
      bucket: 'Rated volume of the bucket.',
      fillFactor: 'Loose volume in the bucket over its rated volume, 0.3 to 1.5.',
      cycle: 'Dig, swing, dump, return.',
      efficiency:
        'Share of the hour at work, more than 0 and at most 1: a 50-minute hour is `50/60`.',
    },
    JobPlateInput: {
      width: 'Width of the plate or drum.',
      overlap: 'Share of the width that overlaps the last lane, 0 to 0.9.',
      speed: 'Speed of travel.',
      efficiency:
        'Share of the time in motion, more than 0 and at most 1: turns and edges lower it.',
      passes: 'Passes over each lift of stone, 1 to 50, from a trial strip.',
      subgradePasses: 'Passes over the subgrade, 1 to 50. Default: no hours are given for it.',
      paverPasses:
        'Passes over the pavers before the joint sand, 1 to 50. Default: no hours are given for them.',
      jointPasses:
        'Passes over the pavers with the joint sand, 1 to 50. Default: no hours are given for them.',
    },
    JobHaulInput: {
      loadTime: 'Time to fill one truck.',
      haulTime: 'Time to drive to the tip, loaded.',
      dumpTime: 'Time at the tip, waiting included.',
      returnTime: 'Time to drive back, empty.',
    },
    JobRatesInput: {
      machine: 'The machine that digs. Optional.',
      byHand: 'Soil that the crew digs by hand, bank volume over time. Optional.',
      plate: 'The plate or roller. Optional.',
      haul: 'The truck that hauls away. Optional.',
      delivery: 'Time of the truck for one delivery of stone or sand, there and back. Optional.',
    },
    JobPointInput: {
      x: 'Plan coordinate.',
      y: 'Plan coordinate.',
    },
    JobUtilityInput: {
      id: 'Id of the line, unique in the job.',
      path: 'Points of the line as marked on the ground, 2 to 50.',
      width: 'Outside diameter or width of the line.',
      tolerance:
        'Width of the zone to dig by hand on each side, as the law where you dig requires.',
      found:
        'Depth to the top of the line, measured in a test hole. Never use a usual or a marked depth. Optional.',
      minimumCover: 'Minimum cover that the utility owner requires. Optional.',
    },
    JobTreeInput: {
      id: 'Id of the tree, unique in the job.',
      x: 'Plan coordinate.',
      y: 'Plan coordinate.',
      trunkDiameter: 'Diameter of the trunk at 4.5 ft (1.4 m) above ground.',
      radiusPerDiameter:
        'Root zone radius over trunk diameter, as the authority requires, 1 to 40.',
      minimumRadius: 'Minimum radius of the root zone. Optional.',
    },
    JobOldPavingInput: {
      material: 'Material of the old paving.',
      thickness: 'Thickness of the old paving, measured at a cut.',
      density: 'Density in place. Default: a published density of the material.',
      outline:
        'Outline of the old paving; or give `pavement`. Only the part in a dig is stripped. In its arcs, `edge` counts from 1.',
      pavement: 'Id of the pavement whose dig contains it; or give `outline`.',
      share: 'Share of the dig of `pavement` that it covers, more than 0, maximum 1. Default: 1.',
    },
    JobExcavationInput: {
      soil: 'Soil type, as classified by the competent person.',
      spoilDistance: 'Distance from the edge of the dig to spoil and gear. Optional.',
    },
    JobJointSandInput: {
      density: 'Dry density in the joint.',
      recess: 'Depth from the top of the paver to the joint sand. Default: none.',
      riseFromBed: 'Height of the joint that bedding sand fills from below. Default: none.',
      waste: 'Allowance added to the order, as a fraction. Default: 0.',
      bag: 'Mass of a bag. Optional.',
    },
    JobEdgeRestraintInput: {
      piece: 'Length of a piece.',
      spikeSpacing: 'Maximum spacing of spikes on straight runs.',
      curvedSpikeSpacing:
        'Maximum spacing of spikes on curves. Default: the spacing on straight runs.',
      lap: 'Length by which pieces overlap. Default: none.',
    },
    JobGeotextileInput: {
      rollWidth: 'Width of a roll.',
      rollLength: 'Length of a roll. Optional.',
      overlap: 'Overlap of strips side by side.',
      upturn: 'Height of fabric turned up the sides of the dig. Default: none.',
      endLap: 'Overlap of pieces end to end. Default: the same as side by side.',
    },
    JobStakeInput: {
      id: 'Id on the stake, unique in the job.',
      x: 'Plan coordinate.',
      y: 'Plan coordinate.',
      finish: 'Elevation of finished grade at the stake. Optional.',
      finishAt:
        'Location of the `finish` level: the stake, or the edge of the paving beside it. Default: `stake`.',
      ground: 'Depth from the string to the existing surface, as measured. Optional.',
      groundFrom:
        'Id of the string that `ground` was measured from, if the stake serves strings of different heights. Default: its only height.',
      groundOn:
        'Surface that `ground` was measured to. Default: old paving if the job has any there, else soil.',
    },
    JobStringInput: {
      tension: 'Horizontal tension in the string.',
      weightPerLength: 'Weight per length of the string as it hangs.',
    },
    JobStringLineInput: {
      id: 'Short id, unique in the job.',
      pavement: 'Id of the pavement that the string serves.',
      height: 'Height of the string above finished grade. Default: the height of the job.',
      reference: 'Line to check the stakes against. Default: `ends`.',
      stakes:
        'Ids of its stakes in order along the string, 2 to 10 000. A stake may serve several strings.',
    },
  });
