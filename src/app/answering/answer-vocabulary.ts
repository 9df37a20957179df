/** The words that people answer with. Another language is another table of this type. */
export interface AnswerVocabulary {
  /** The whole message: nothing is asked or said. */
  readonly thanks: readonly string[];
  /** May come before what is said, with a comma or none, and says nothing itself. */
  readonly opening: readonly string[];
  /** By themselves after something was said: it wasn't so. */
  readonly correction: readonly string[];
  /** May precede what is said of the whole message. */
  readonly preamble: readonly string[];
  /** Of the whole message: the cards are as they were. Of one card, where it follows or precedes its name, it is as it was. */
  readonly unchanged: readonly string[];
  /** The whole message: not working today. */
  readonly away: readonly string[];
  /** In place of a number: nothing is left. */
  readonly done: readonly string[];
  /** Nothing is left, where a word such as `left` follows; by itself it may also mean that nothing changed. */
  readonly nothing: readonly string[];
  /** Follow a number. */
  readonly points: readonly string[];
  /** Follow a number of what is left. */
  readonly left: readonly string[];
  /** Precede or follow a number of points worked. */
  readonly worked: readonly string[];
  /** Precede or follow a number of points that were surprise work. */
  readonly surprise: readonly string[];
  /** Precede what a card is waiting for. Plain letters, as the words for a note. */
  readonly blocked: readonly string[];
  /** Precede a note. */
  readonly note: readonly string[];
  /** In place of a card: all that are open. */
  readonly every: readonly string[];
  /** The same of two. */
  readonly both: readonly string[];
  /** In place of a card: those that are open and weren't spoken of. */
  readonly rest: readonly string[];
  /** Precede a card's number or short name. */
  readonly card: readonly string[];
  /** The same where no card is called so. */
  readonly ticket: readonly string[];
  /** In place of the only other card. */
  readonly other: readonly string[];
  /** Stands for a card after what tells which: `the first one`. */
  readonly pronoun: readonly string[];
  /** Say of a card that somebody worked on it, and not how much. */
  readonly busy: readonly string[];
  /** Takes `done` back. */
  readonly not: readonly string[];
  /** Before the cards of which something else is said than of all others. */
  readonly except: readonly string[];
  /** After a number: and half a point. */
  readonly andHalf: readonly string[];
  /** In place of a number: half a point. */
  readonly half: readonly string[];
  /** Compares with an earlier day. */
  readonly as: readonly string[];
  /** Says nothing of the day that is spoken about, unless that is another one. */
  readonly today: readonly string[];
  /** Part a card from what is said about it. */
  readonly has: readonly string[];
  /** Between `done` and a card. */
  readonly with: readonly string[];
  /** Before what was until now, or on an earlier day: `3, was 5`. */
  readonly was: readonly string[];
  /** After what was: what is. */
  readonly now: readonly string[];
  /** At the end of what was so then. */
  readonly yesterday: readonly string[];
  /** Say of what isn't so yet: `will be done`. */
  readonly hope: readonly string[];
  /** Take something back of what is said to be done: `done, but not tested`. */
  readonly hedge: readonly string[];
  /** Part one thing that is said from the next, as a comma does. */
  readonly parting: readonly string[];
  /** Before a reason. */
  readonly because: readonly string[];
  /** Say that something changed: to what is left only where a word of `to` follows. */
  readonly change: readonly string[];
  /** Before a number that is no more than about right. What is finished isn't so by a guess. */
  readonly guess: readonly string[];
  /** Before an exception: `all but berth-7`. */
  readonly whole: readonly string[];
  /** Part what is said about a card from the card that follows: `3 for berth-7`. */
  readonly about: readonly string[];
  /** Before what was left until now: `from 5 to 3`. */
  readonly from: readonly string[];
  /** Before a bound: what is left is no more than that. */
  readonly atMost: readonly string[];
  /** Between what was left until now and what is left. */
  readonly to: readonly string[];
  /** Between cards about which the same is said. */
  readonly and: readonly string[];
  /** Before how many cards there are: `my 2 are done`. */
  readonly the: readonly string[];
  /** Say nothing about cards or numbers. */
  readonly filler: readonly string[];
  /** Call a card by its place in the list. */
  readonly ordinals: readonly string[];
  /** Numbers in words, from 0. */
  readonly numbers: readonly string[];
}

export const ENGLISH: AnswerVocabulary = {
  thanks: ['thanks', 'thank you', 'thanks a lot', 'many thanks', 'thx', 'cheers'],
  opening: [
    ...[
      'sorry',
      'oops',
      'i meant',
      'i mean',
      'meant',
      'correction',
      'make that',
      'make it',
      'actually',
      'ok',
      'okay',
      'yes',
      'yep',
      'yeah',
    ],
    ...['hi', 'hello', 'hey', 'good morning', 'good afternoon', 'good evening', 'morning'],
  ],
  correction: [
    'sorry',
    'oops',
    'i meant',
    'i mean',
    'actually',
    'no',
    'wait',
    'no wait',
    'rather',
    'or rather',
  ],
  preamble: ['i am', 'i’m', 'im', 'it’s', 'still', 'i have', 'i’ve', 'they’re', 'i was'],
  unchanged: [
    'same',
    'the same',
    'all the same',
    'same as before',
    'same as yesterday',
    'as yesterday',
    'as before',
    'no change',
    'no changes',
    'no change today',
    'not changed',
    'nothing changed',
    'nothing has changed',
    'nothing new',
    'nothing new today',
    'no news',
    'no progress',
    'no progress today',
    'all same',
    'same for all',
    'same again',
    'unchanged',
    'ditto',
    'no movement',
    'no update',
    'no updates',
    'nothing done today',
    'not touched',
    'untouched',
    'not started',
    'not started yet',
    'haven’t started',
    'didn’t get to it',
    'did nothing',
    'didn’t touch it',
    'didn’t work on',
    'didn’t work on it',
    'both the same',
    'both same',
  ],
  away: [
    'away',
    'away today',
    'off today',
    'out today',
    'out sick',
    'off sick',
    'sick',
    'sick today',
    'sick day',
    'sick again',
    'off sick today',
    'feeling ill',
    'not well',
    'unwell',
    'ill',
    'ill today',
    'day off',
    'day off today',
    'out of office',
    'ooo',
    'not in today',
    'not working',
    'not working today',
    'on holiday',
    'on vacation',
    'on leave',
  ],
  done: ['done', 'finished', 'complete', 'completed', 'none', '✅'],
  nothing: ['nothing'],
  points: ['point', 'points', 'pt', 'pts', 'p', 'sp', 'story points', 'story point'],
  left: ['left', 'remaining', 'to go', 'to do'],
  worked: ['worked'],
  surprise: ['surprise'],
  blocked: ['blocked', 'stuck'],
  note: ['note'],
  every: [
    ...['all', 'everything', 'everything’s', 'each', 'all of them', 'all of it', 'all cards', 'each card'],
    ...['every card', 'each of them'],
  ],
  both: ['both', 'both of them', 'both cards', 'the two', 'either', 'either of them'],
  rest: ['rest', 'others', 'all others', 'other cards', 'rest of them', 'everything else', 'all else'],
  card: ['card', 'cards'],
  ticket: ['ticket', 'task', 'story', 'issue', 'item', 'number', 'nr', 'nr.', 'no.'],
  other: ['other'],
  pronoun: ['one'],
  busy: ['working on', 'worked on', 'busy with', 'started', 'started on', 'started with', 'continued with'],
  not: ['not', 'isn’t', 'isnt', 'wasn’t', 'wasnt'],
  except: ['except', 'except for', 'apart from', 'other than', 'but'],
  andHalf: ['and a half', '& a half'],
  half: ['half a point', 'a half point', 'half point', 'a half'],
  as: ['as'],
  today: ['today'],
  has: ['has', 'have', 'had', 'is', 'are', 'was', 'were', 'at', 'with', 'needs', 'takes', 'stays', 'remains'],
  with: ['with', 'w/'],
  was: ['was', 'were', 'had'],
  now: ['now', 'is', 'it’s'],
  yesterday: ['yesterday'],
  hope: ['will', 'should', 'hopefully', 'tomorrow', 'soon', 'almost', 'nearly', 'by', 'till', 'until'],
  hedge: [
    ...['not', 'yet', 'except', 'almost', 'nearly', 'mostly', 'less', 'needs', 'still', 'missing', 'waiting'],
    ...['pending', 'only', 'just', 'tomorrow', 'later', 'soon', 'open', 'if', 'unless', 'without', 'apart'],
  ],
  parting: ['but', 'though', 'although', 'while'],
  because: ['because', 'since'],
  change: [
    ...['went', 'gone', 'grew', 'dropped', 'shrank', 'down', 'up', 'less', 'more', 'rose', 'fell'],
    ...['increased', 'decreased', 'reduced', 'bumped', 'jumped'],
  ],
  guess: [
    'about',
    'around',
    'roughly',
    'maybe',
    'probably',
    'think',
    'guess',
    'ish',
    'perhaps',
    'approx',
    'approximately',
    'circa',
    'ca',
  ],
  whole: ['all', 'everything', 'nothing', 'none', 'both'],
  about: ['for', 'on'],
  from: ['from'],
  atMost: ['up to'],
  to: ['to', '->', '→', '=>'],
  and: ['and', '&', '+'],
  the: ['the', 'my'],
  filler: [
    ...[
      'i',
      'i’m',
      'im',
      'am',
      'i’ve',
      'it',
      'it’s',
      'its',
      'that',
      'that’s',
      'thats',
      'this',
      'they’re',
      'they',
    ],
    ...['still', 'now', 'only', 'just', 'the', 'my', 'got', 'there'],
    ...['there’s', 'so', 'hmm', 'please', 'pls', 'thanks', 'thx', 'cheers', 'ive'],
  ],
  ordinals: ['first', 'second', 'third', 'fourth', 'fifth', 'sixth'],
  numbers: [
    ...['zero', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten'],
    ...['eleven', 'twelve', 'thirteen'],
  ],
};

const { thanks: _, opening: __, correction: ___, ...ABOUT_CARDS } = ENGLISH;
const WORDS_OF_ANSWERS = new Set(
  Object.values(ABOUT_CARDS)
    .flat()
    .flatMap((phrase: string) => phrase.split(' ')),
);

/** Whether the word means something in an answer, so that it can't call a card in whose title it stands. */
export function isWordOfAnswers(word: string): boolean {
  return WORDS_OF_ANSWERS.has(word.toLowerCase());
}

/** Whether the word precedes what a card is called by. */
export function isWordForCard(word: string, { card }: AnswerVocabulary = ENGLISH): boolean {
  return card.includes(word.toLowerCase());
}

/** Whether the word precedes what a card is waiting for. */
export function isWordForBlocked(word: string, { blocked }: AnswerVocabulary = ENGLISH): boolean {
  return blocked.includes(word.toLowerCase());
}
