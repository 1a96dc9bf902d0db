import { makeReader } from '../input.js';
import { EARTH } from '../sources/levelling-figures.js';
import { length, type LengthInput } from '../units/construct.js';
import type { NumberInput } from '../units/read-number.js';
import { exactOf, fromSI, type Length } from '../units/quantity.js';
import { divideRatios, multiplyRatios } from '../units/ratio.js';
import { given, withWorking, type Worked } from '../working.js';
import { SIGHT } from './limits.js';
