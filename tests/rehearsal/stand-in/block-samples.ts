/** The smallest block or element of each kind, to be spoilt by tests. */
import { mrkdwn, plain } from './fixture.ts';

export const section = (more: object = {}) => ({ type: 'section', text: mrkdwn('text'), ...more });
export const actions = (...elements: unknown[]) => ({ type: 'actions', elements });
export const button = (more: object = {}) => ({ type: 'button', text: plain('Go'), ...more });
export const option = (more: object = {}) => ({ text: plain('Five'), value: '5', ...more });
export const select = (more: object = {}) => ({ type: 'static_select', options: [option()], ...more });
export const input = (element: unknown, more: object = {}) => ({
  type: 'input',
  label: plain('Left'),
  element,
  ...more,
});
export const typed = (more: object = {}) => ({ type: 'plain_text_input', ...more });
export const image = (more: object = {}) => ({
  type: 'image',
  image_url: 'https://example.com/a.png',
  alt_text: 'a',
  ...more,
});
