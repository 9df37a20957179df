import { expect, it } from 'vitest';
import { howToMend } from './browser.ts';

it('a browser that misses a library names it and the package that brings it', () => {
  const failure = 'error while loading shared libraries: libnss3.so: cannot open shared object file';
  expect(howToMend('linux', failure)).toMatch(/misses the library libnss3\.so\..*apt-get install libnss3/);
});

it('elsewhere than on Linux the advice is to install Chrome', () => {
  expect(howToMend('darwin', 'not found')).toContain('install it');
});
