/**
 * Headers that make a browser save a file, no matter what it holds, and never show it as a page. Names of people's files
 * can hold anything: RFC 6266 gives an ASCII name for old clients and the whole one in percent signs (RFC 8187).
 */
export function attachmentHeaders(fileName: string): Record<string, string> {
  const ascii = fileName.replaceAll(/[^\x20-\x7e]|["\\%]/g, '_');
  const whole = encodeURIComponent(fileName.toWellFormed()).replaceAll(
    /['()*!]/g,
    (sign) => `%${sign.charCodeAt(0).toString(16).toUpperCase()}`,
  );
  return {
    'content-disposition': `attachment; filename="${ascii}"; filename*=UTF-8''${whole}`,
    'x-content-type-options': 'nosniff',
  };
}
