/**
 * The buttons of one team in the overview, in rows of a kind, for whoever may use them. A row without a button is
 * left out. Whether somebody may is decided by the use case behind the button; here nobody is offered a refusal.
 */
import type { Button } from '@slack/types';
import type { TeamOverview } from '../../app/watching/overview.ts';
import { encodeValue } from '../button-values.ts';
import { ACTIONS } from '../ids.ts';
import { button } from './block-builders.ts';

/** More in one row are a thicket. */
export const MOST_BUTTONS_IN_ROW = 6;

/** Makes a button that means the team of the row, wherever it is pressed. */
type PlaceButton = (label: string, actionId: string, primary?: boolean) => Button;

export function overviewButtons(overview: TeamOverview): Button[][] {
  const value = encodeValue({ channelId: overview.team.channelId });
  const place: PlaceButton = (label, actionId, primary = false) =>
    button(label, { actionId, value, primary });
  const rows = [
    dailyRow(overview, place),
    planningRow(overview, place),
    sprintAndTeamRow(overview, place),
    numbersRow(overview, place),
  ];
  return rows.filter((row) => row.length > 0);
}

/** The day's work of a member. */
function dailyRow(overview: TeamOverview, place: PlaceButton): Button[] {
  const { sprint, begun, isMember, myOpenCards, promptState } = overview;
  if (!sprint || !isMember) return [];
  const toAnswer = promptState === undefined || promptState === 'asked';
  const answer = button(toAnswer ? 'Answer' : 'Change my answer', {
    actionId: ACTIONS.openAnswerForm,
    value: encodeValue({ sprintId: sprint.id }),
    primary: toAnswer,
  });
  return [
    ...(begun && myOpenCards.length > 0 ? [answer] : []),
    place('Status', ACTIONS.showStatus),
    place('Cards', ACTIONS.showCards),
    ...(begun ? [place('Pull in a card', ACTIONS.openPullForm)] : []),
    place('Drop a card', ACTIONS.openDropForm),
  ];
}

/** Planning, and the questions that one asks before it. */
function planningRow({ sprint, isFacilitator }: TeamOverview, place: PlaceButton): Button[] {
  const plan = place(sprint ? 'Plan another sprint' : 'Plan a sprint', ACTIONS.openPlanForm, !sprint);
  return [
    ...(isFacilitator ? [plan] : []),
    place('Commitment range', ACTIONS.showRange),
    place('Surprise odds', ACTIONS.showOdds),
    place('Forecast', ACTIONS.openForecastForm),
    place('History', ACTIONS.showHistory),
  ];
}

/** What a facilitator does with the sprint as a whole, and with the team's settings. */
function sprintAndTeamRow(overview: TeamOverview, place: PlaceButton): Button[] {
  const { sprint, begun, isFacilitator, reopenable } = overview;
  if (!isFacilitator) return [];
  return [
    ...(sprint && begun ? [place('Close the sprint', ACTIONS.openCloseForm)] : []),
    ...(sprint ? [place('Cancel the sprint', ACTIONS.openCancelForm)] : []),
    ...(reopenable && !sprint ? [place('Reopen the last sprint', ACTIONS.reopenLastSprint)] : []),
    place('Team and times', ACTIONS.openSetupForm),
    place('Scale and thresholds', ACTIONS.openMeasuresForm),
  ];
}

/** What is recorded about sprints that are over, and the ways in and out of it. */
function numbersRow(overview: TeamOverview, place: PlaceButton): Button[] {
  const { isFacilitator, isProductOwner, hasFinishedSprint } = overview;
  return [
    ...(hasFinishedSprint && (isFacilitator || isProductOwner)
      ? [place('Record a value', ACTIONS.openValueForm)]
      : []),
    ...(hasFinishedSprint && isFacilitator ? [place('Baseline sprint', ACTIONS.openBaselineForm)] : []),
    ...(isFacilitator ? [place('Import past sprints', ACTIONS.openImportForm)] : []),
    ...(hasFinishedSprint && isFacilitator ? [place('Export', ACTIONS.exportSprints)] : []),
  ];
}
