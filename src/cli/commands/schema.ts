/** `flatpatch schema`: the form of the car file, or of the answers, as JSON Schema. */
import { type Command, Option } from 'commander';
import { carFileSchema } from '../../car/schema.ts';
import { answersSchema } from '../answers/index.ts';
import { command, sayLines } from '../command.ts';

export function schemaCommand(): Command {
  const made = command(
    'schema',
    'JSON Schema (draft 2020-12) of the car file, or of the answers under --json',
    ['flatpatch schema > car-file.schema.json', 'flatpatch schema --of answers'],
  );
  return made
    .addOption(new Option('--of <what>', 'which form').choices(['car-file', 'answers']).default('car-file'))
    .action((options: { readonly of: string }) => {
      const schema = options.of === 'answers' ? answersSchema() : carFileSchema();
      sayLines([JSON.stringify(schema, null, 1)]);
    });
}
