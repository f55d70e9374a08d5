/** What is sent is looked at before it is used: a mapping or not, and the one form in which a refusal is told. */
import type { Problem } from '../measured/problem.ts';

export const wrong = (message: string): { ok: false; problem: Problem } => ({
  ok: false,
  problem: { code: 'asked/form', message, path: '', weight: 'error' },
});

export type Mapping = Readonly<Record<string, unknown>>;

export const isMapping = (value: unknown): value is Mapping =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
