/**
 * Prints the texts of the table that the page's scripts say, an identifier a line: of one that is put together, such as
 * `rails-units-${unit}`, each that its type can become. It is told the configuration of the type check.
 */
import { dirname } from 'node:path';

import ts from 'typescript';

const [, , file = ''] = process.argv;
const { config, error } = ts.readConfigFile(file, ts.sys.readFile);
if (error) throw new Error(String(error.messageText));
const { fileNames, options } = ts.parseJsonConfigFileContent(config, ts.sys, dirname(file));
const program = ts.createProgram(fileNames, options);
const types = program.getTypeChecker();
const said = new Set();

/** What a call may say; one that may say any text names none. @param {ts.Expression} id */
function identifiers(id) {
  const type = types.getTypeAtLocation(id);
  if (types.typeToString(type) === 'keyof Table') return [];
  return (type.isUnion() ? type.types : [type]).flatMap((one) => (one.isStringLiteral() ? [one.value] : []));
}

/** @param {ts.Node} node */
function look(node) {
  if (ts.isCallExpression(node) && node.expression.getText() === 'say' && node.arguments[0]) {
    for (const id of identifiers(node.arguments[0])) said.add(id);
  }
  ts.forEachChild(node, look);
}

for (const source of program.getSourceFiles()) if (!source.isDeclarationFile) look(source);
console.log([...said].sort().join('\n'));
