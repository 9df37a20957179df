/** The statements that make the bot's own user, from deploy/database/owner.sql, as they are run on a server of a test. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';

const FILE = join(import.meta.dirname, '../../deploy/database/owner.sql');
const PASSWORD_LINE = '\\set password `cat /run/secrets/database-password`\n';

/** For psql, with the password from another file. */
export function ownerScript(passwordFile: string): string {
  return sourceText().replace('/run/secrets/database-password', passwordFile);
}

/** @param name of user and database, since a server of a test has several */
export function ownerStatements(name: string, password: string): string[] {
  return sourceText()
    .replace(PASSWORD_LINE, '')
    .replaceAll(/--.*$/gm, '')
    .replaceAll('loadline', name)
    .replaceAll(":'password'", `'${password}'`)
    .split(';')
    .map((statement) => statement.trim())
    .filter((statement) => statement !== '');
}

function sourceText(): string {
  const text = readFileSync(FILE, 'utf8');
  if (!text.includes(PASSWORD_LINE)) throw new Error('owner.sql takes its password from elsewhere now.');
  return text;
}
