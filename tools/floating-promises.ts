/**
 * Promises that nobody waits for: a failure in one is lost, and a test around one cannot fail.
 *
 * In    a tsconfig
 * Out   `file:line` of each expression statement whose value is a promise, unless it is marked by `void` or ends
 *       in a catch
 */
import { dirname, relative } from 'node:path';
import ts from 'typescript';

export function floatingPromises(configPath: string): string[] {
  const root = dirname(configPath);
  const config = ts.parseJsonConfigFileContent(
    ts.readConfigFile(configPath, ts.sys.readFile).config,
    ts.sys,
    root,
  );
  return floatingIn(ts.createProgram(config.fileNames, config.options), root);
}

export function floatingIn(program: ts.Program, root: string): string[] {
  const checker = program.getTypeChecker();
  const found: string[] = [];
  for (const file of program.getSourceFiles()) {
    if (file.isDeclarationFile || file.fileName.includes('/node_modules/')) continue;
    const walk = (node: ts.Node): void => {
      if (ts.isExpressionStatement(node) && floats(node.expression, checker)) {
        const { line } = file.getLineAndCharacterOfPosition(node.getStart(file));
        found.push(
          `${relative(root, file.fileName)}:${line + 1}: nobody waits for this promise: ${node.expression.getText(file).slice(0, 60)}`,
        );
      }
      ts.forEachChild(node, walk);
    };
    walk(file);
  }
  return found;
}

function floats(expression: ts.Expression, checker: ts.TypeChecker): boolean {
  if (ts.isVoidExpression(expression) || ts.isAwaitExpression(expression)) return false;
  if (ts.isBinaryExpression(expression) && expression.operatorToken.kind === ts.SyntaxKind.EqualsToken)
    return false;
  if (isTestCall(expression) || isCaught(expression)) return false;
  const type = checker.getTypeAtLocation(expression);
  const parts = type.isUnion() ? type.types : [type];
  return parts.some((part) => {
    const then = part.getProperty('then');
    // a value may have a "then" that is no function: a JSON Schema has one
    return (
      then !== undefined && checker.getTypeOfSymbolAtLocation(then, expression).getCallSignatures().length > 0
    );
  });
}

/** node:test itself waits for the tests that a file declares. */
const isTestCall = (expression: ts.Expression): boolean =>
  ts.isCallExpression(expression) &&
  /^(test|it|describe|suite)(\.\w+)?$/.test(expression.expression.getText());

/** Ends in a catch, or in a then that says what to do when it fails. */
const isCaught = (expression: ts.Expression): boolean => {
  if (!ts.isCallExpression(expression) || !ts.isPropertyAccessExpression(expression.expression)) return false;
  const name = expression.expression.name.text;
  return name === 'catch' || (name === 'then' && expression.arguments.length === 2);
};
