/** Amounts of the exhaust's form: what is decided has no spread, what is measured has. */
import { z } from 'zod';
import { amount, stated } from '../field.ts';

export const millimetres = (means: string, measure: string, min: number, max: number) =>
  stated({ means, measure, unit: 'mm', si: 'm', min, max });

export const length = (means: string, measure: string, min: number, max: number, usual = 'vernier') =>
  amount({ means, measure, unit: 'mm', si: 'm', min, max, usual });

export const degrees = (means: string, measure: string, min: number, max: number) =>
  stated({ means, measure, unit: 'deg', si: 'rad', min, max });

export const count = (means: string, min: number, max: number) =>
  z.int().min(min).max(max).meta({ title: means });
