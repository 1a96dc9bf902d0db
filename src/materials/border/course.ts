import type { Length } from '../../units/quantity.js';
import type { Unit } from '../pavers/unit.js';

/**
 * How the pavers of a border lie to its edge, laid flat: `soldier` and `header` with the long side
 * square to the edge, `sailor` with the long side along it. Soldier and header have the same plan;
 * some crews use `soldier` for pavers set on end. For those, give the size of the face that shows.
 */
export const COURSES = Object.freeze(['soldier', 'sailor', 'header'] as const);
/** A course of {@link COURSES}. */
export type Course = (typeof COURSES)[number];

/** A course as laid: its depth, and the length of edge per paver. Internal. */
export interface CourseSize {
  readonly depth: Length;
  readonly along: Length;
}

/** The size of a paver in a course, without its joint. Internal. */
export const courseSize = (course: Course, unit: Unit): CourseSize =>
  course === 'sailor'
    ? { depth: unit.width, along: unit.length }
    : { depth: unit.length, along: unit.width };
