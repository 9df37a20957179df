/** Why the database can't be used. A problem never holds a password. */
export type StoreProblem =
  | { readonly code: 'database-url-invalid' }
  | { readonly code: 'database-encryption-unclear' }
  | { readonly code: 'database-unencrypted'; readonly place: string }
  | { readonly code: 'database-certificate-refused'; readonly place: string; readonly reason: string }
  | { readonly code: 'database-unreachable'; readonly place: string; readonly reason: string }
  | { readonly code: 'database-login-refused'; readonly place: string }
  | { readonly code: 'database-missing'; readonly place: string }
  | { readonly code: 'database-rights-missing'; readonly place: string }
  | { readonly code: 'database-too-old'; readonly version: string; readonly oldest: string }
  | { readonly code: 'database-full'; readonly place: string }
  | { readonly code: 'database-read-only'; readonly place: string }
  | { readonly code: 'database-busy'; readonly place: string }
  | { readonly code: 'database-migration-failed'; readonly reason: string }
  | { readonly code: 'data-folder-in-use'; readonly folder: string }
  | { readonly code: 'data-folder-of-others'; readonly folder: string; readonly owner: string }
  | { readonly code: 'data-folder-unusable'; readonly folder: string; readonly reason: string }
  | {
      readonly code: 'data-folder-full';
      readonly folder: string;
      /** In megabytes. */
      readonly free: number;
      readonly needed: number;
    }
  | { readonly code: 'data-folder-damaged'; readonly folder: string }
  | { readonly code: 'data-folder-empty'; readonly folder: string }
  | { readonly code: 'data-folder-taken'; readonly folder: string }
  | { readonly code: 'dump-unusable'; readonly folder: string };

export class StoreError extends Error {
  override readonly name = 'StoreError';
  readonly code: StoreProblem['code'];
  readonly problem: StoreProblem;

  constructor(problem: StoreProblem, options: { cause?: unknown } = {}) {
    super(Object.values(problem).join(', '), options);
    this.code = problem.code;
    this.problem = problem;
  }
}
