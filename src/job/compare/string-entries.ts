import type { JobPlan, StakePlan, StringLinePlan, SurfacePlan } from '../plan/plan.js';
import { presence, valueOf, type EntryOwner, type PlanEntry } from './plan-entry.js';

/** What is compared of every string and its stakes. Internal. */
export const stringEntries = ({ stringLines }: JobPlan): PlanEntry[] =>
  stringLines.flatMap((line, index) => {
    const owner: EntryOwner = {
      about: 'string',
      subject: `string ${line.id}`,
      key: `string ${line.id}`,
      path: ['stringLines', index],
    };
    return [
      presence(owner, 'pavement', line.pavement, { at: ['pavement'] }),
      valueOf(owner, ['stringHeight'], 'height above finished grade', line.stringHeight),
      ...line.surfaces.flatMap((surface, at) => surfaceEntries(owner, surface, at)),
      ...line.stakes.flatMap((stake, at) => stakeEntries(owner, line, { stake, at })),
    ];
  });

function surfaceEntries(owner: EntryOwner, surface: SurfacePlan, at: number): PlanEntry[] {
  const one: EntryOwner = {
    about: 'depth',
    subject: owner.subject,
    key: `${owner.key} surface ${surface.surface}`,
    path: [...owner.path, 'surfaces', at],
  };
  const { belowString, placedBelowString } = surface;
  return [
    presence(one, `${surface.surface} below it`, belowString, {
      owner: owner.key,
      at: ['belowString'],
    }),
    valueOf(
      one,
      ['placedBelowString'],
      `${surface.surface} below it, as placed`,
      placedBelowString,
    ),
  ];
}

function stakeEntries(
  owner: EntryOwner,
  line: StringLinePlan,
  { stake, at }: { readonly stake: StakePlan; readonly at: number },
): PlanEntry[] {
  const { id, ground, dig, soil, station, finishElevation, stringElevation } = stake;
  const one: EntryOwner = {
    about: 'stake',
    subject: `stake ${id} on string ${line.id}`,
    key: `${owner.key} stake ${id}`,
    path: [...owner.path, 'stakes', at],
  };
  const move = line.moves.find((other) => other.id === id);
  return [
    presence(one, 'station', station, { owner: owner.key, at: ['station'], printed: 'length' }),
    valueOf(one, ['ground'], 'ground below the string', ground),
    valueOf(one, ['dig'], 'depth of dig', dig),
    valueOf(one, ['soil'], 'soil to dig', soil),
    valueOf(one, ['offset'], 'move', move === undefined ? 'none' : move.direction),
    valueOf(one, ['offset'], 'distance to move', move?.distance ?? null),
    valueOf(one, ['finishElevation'], 'finished grade', finishElevation, { printed: 'elevation' }),
    valueOf(one, ['stringElevation'], 'elevation of the string', stringElevation, {
      printed: 'elevation',
    }),
    ...(stake.rods ?? []).map(({ surface, rod }, index) =>
      valueOf(one, ['rods', index, 'rod'], `rod on ${surface}`, rod, { printed: 'elevation' }),
    ),
  ];
}
