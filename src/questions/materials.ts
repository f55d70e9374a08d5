/** What the material table has, for whoever offers a choice. */
import { SPRING_MATERIALS } from '../materials/spring-material.ts';

export interface MaterialChoice {
  readonly name: string;
  readonly means: string;
  readonly kind: 'wire' | 'bar';
}

export const materialChoices = (): readonly MaterialChoice[] =>
  SPRING_MATERIALS.map(({ name, means, kind }) => ({ name, means, kind }));
