/**
 * What a request's body says. Read once, here: what was judged is what the listeners get, so a body that two
 * readers would understand differently can't get one thing checked and another one done.
 */

/** Far deeper than anything the platform nests, far from what exhausts a stack. */
const DEEPEST_NESTING = 100;

const FORM = 'application/x-www-form-urlencoded';
const JSON_TEXT = 'application/json';

export function isForm(contentType: string | undefined): boolean {
  return plainType(contentType) === FORM;
}

/** Whether the platform sends content of that type. */
export function isKnownType(contentType: string | undefined): boolean {
  return [FORM, JSON_TEXT].includes(plainType(contentType) ?? '');
}

/** Parameters of the type are left aside: both kinds of content are always UTF-8. */
function plainType(contentType: string | undefined): string | undefined {
  return contentType?.split(';')[0]?.trim().toLowerCase();
}

/**
 * JSON, or a form, or a form with JSON as its `payload`. Without nulls, as `withoutNulls` says.
 *
 * @returns undefined when it is not readable, names a form's key twice, or nests too deeply
 */
export function contentOf(contentType: string | undefined, rawBody: Buffer): unknown {
  const text = rawBody.toString('utf8');
  const form = isForm(contentType) ? [...new URLSearchParams(text)] : undefined;
  const fields = new Map(form);
  if (form && fields.size < form.length) return undefined;
  const json = form ? fields.get('payload') : text;
  if (json === undefined) return Object.fromEntries(fields);
  try {
    const value: unknown = JSON.parse(json);
    return nestsDeeply(value) ? undefined : withoutNulls(value);
  } catch {
    return undefined;
  }
}

/** Without recursion: that is what deep nesting would break. */
function nestsDeeply(value: unknown): boolean {
  let level: unknown[] = [value];
  for (let depth = 0; level.length > 0; depth += 1) {
    if (depth > DEEPEST_NESTING) return true;
    level = level.flatMap((node) => (typeof node === 'object' && node !== null ? Object.values(node) : []));
  }
  return false;
}

/**
 * The platform leaves a field out or sends null, and means the same; the library stumbles over some nulls. What a form's
 * `state` holds stays as it is: there null is a field that was emptied.
 */
export function withoutNulls(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(withoutNulls);
  if (typeof value !== 'object' || value === null) return value;
  const given = Object.entries(value).filter(([, inner]) => inner !== null);
  return Object.fromEntries(
    given.map(([name, inner]) => [name, name === 'state' ? inner : withoutNulls(inner)]),
  );
}
