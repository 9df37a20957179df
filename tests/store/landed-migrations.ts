/**
 * SHA-256 of every migration that has landed. A landed migration is never edited, since databases out
 * there have run it: add another, and its line here.
 */
export const LANDED_MIGRATIONS: Readonly<Record<string, string>> = {
  '0000_functions.sql': 'f2d66ce52b7e2be471e0fb3905b0311fda008129c941c05a60b2d4548dcd1dad',
  '0001_tables.sql': 'c0141e2ca6c86ffeaecf53506dea88e46f4aa67f63eb8dd6349756bc18bd257d',
  '0002_rules.sql': 'f77cbe4549cf8f18aebcf622d2eba908c87ce350a37864a4200c36caeb1e7ed1',
  '0003_history.sql': '449b8b64cb67220e9aa2b69b6cac4b3f8f88ef3a70d588433add2fd8f5ac23aa',
};
