import { alarmInDraft } from './alarm-in-draft.ts';
import { allowUnused } from './allow-unused.ts';
import { badCount } from './bad-count.ts';
import { bandHitsCasing } from './band-hits-casing.ts';
import { bandHitsCeiling } from './band-hits-ceiling.ts';
import { bandTopShows } from './band-top-shows.ts';
import { billedOverContract } from './billed-over-contract.ts';
import { bitCrept } from './bit-crept.ts';
import { blockingMissesJoist } from './blocking-misses-joist.ts';
import { blockingOffWidth } from './blocking-off-width.ts';
import { boardOffSize } from './board-off-size.ts';
import { bottomGapShows } from './bottom-gap-shows.ts';
import { bottomMissesRabbet } from './bottom-misses-rabbet.ts';
import { bottomOffSides } from './bottom-off-sides.ts';
import { bottomWontFit } from './bottom-wont-fit.ts';
import { bottomsInUnlikePlaces } from './bottoms-in-unlike-places.ts';
import { boxBuried } from './box-buried.ts';
import { boxOffBlocking } from './box-off-blocking.ts';
import { changesOutOfOrder } from './changes-out-of-order.ts';
import { cleatOffGauge } from './cleat-off-gauge.ts';
import { cleatOffStock } from './cleat-off-stock.ts';
import { cleatsCrowdChannel } from './cleats-crowd-channel.ts';
import { cleatsMeetInHalfBeam } from './cleats-meet-in-half-beam.ts';
import { closingPiece } from './closing-piece.ts';
import { cofferOffSize } from './coffer-off-size.ts';
import { commitAside } from './commit-aside.ts';
import { cutFromOtherStock } from './cut-from-other-stock.ts';
import { cutNoLongerFits } from './cut-no-longer-fits.ts';
import { cutTwice } from './cut-twice.ts';
import { cutWithoutRecord } from './cut-without-record.ts';
import { cutterCreeps } from './cutter-creeps.ts';
import { deductsOverContract } from './deducts-over-contract.ts';
import { depositOverContract } from './deposit-over-contract.ts';
import { depthsNearlyEqual } from './depths-nearly-equal.ts';
import { endCoffersDiffer } from './end-coffers-differ.ts';
import { fixtureInBeam } from './fixture-in-beam.ts';
import { fixtureOffCenter } from './fixture-off-center.ts';
import { fixtureOutsideRoom } from './fixture-outside-room.ts';
import { gridDoesntClose } from './grid-doesnt-close.ts';
import { grooveLeavesNoLip } from './groove-leaves-no-lip.ts';
import { grooveTooHighForBottom } from './groove-too-high-for-bottom.ts';
import { grooveWontTurn } from './groove-wont-turn.ts';
import { groovesDontMeet } from './grooves-dont-meet.ts';
import { hangsByOneEdge } from './hangs-by-one-edge.ts';
import { headroom } from './headroom.ts';
import { heldDownUnderHump } from './held-down-under-hump.ts';
import { humpEatsSpacerRoom } from './hump-eats-spacer-room.ts';
import { jointOpens } from './joint-opens.ts';
import { jointOpensInWinter } from './joint-opens-in-winter.ts';
import { joistNotThere } from './joist-not-there.ts';
import { lightTooNearWood } from './light-too-near-wood.ts';
import { lineGoesNowhere } from './line-goes-nowhere.ts';
import { linesOverlap } from './lines-overlap.ts';
import { longerThanTheBoard } from './longer-than-the-board.ts';
import { mdfEdgeFastening } from './mdf-edge-fastening.ts';
import { mixedMovement } from './mixed-movement.ts';
import { nailShows } from './nail-shows.ts';
import { nailWontHold } from './nail-wont-hold.ts';
import { noCeilingThere } from './no-ceiling-there.ts';
import { noCofferSizeFits } from './no-coffer-size-fits.ts';
import { noFirstPiece } from './no-first-piece.ts';
import { noRate } from './no-rate.ts';
import { noSuchCommit } from './no-such-commit.ts';
import { noSuchPiece } from './no-such-piece.ts';
import { noWayIn } from './no-way-in.ts';
import { notLaidOut } from './not-laid-out.ts';
import { notPositive } from './not-positive.ts';
import { notSupportedLayout } from './not-supported-layout.ts';
import { notVerified } from './not-verified.ts';
import { offcutTooShort } from './offcut-too-short.ts';
import { orderGoesRound } from './order-goes-round.ts';
import { orderNamesNothing } from './order-names-nothing.ts';
import { orderOfItself } from './order-of-itself.ts';
import { otherSideNowhere } from './other-side-nowhere.ts';
import { panelNotFromItsSheet } from './panel-not-from-its-sheet.ts';
import { panelWontOpen } from './panel-wont-open.ts';
import { partVanishes } from './part-vanishes.ts';
import { paymentOverContract } from './payment-over-contract.ts';
import { phaseOverWhole } from './phase-over-whole.ts';
import { pieceMiscounted } from './piece-miscounted.ts';
import { piecesOverlap } from './pieces-overlap.ts';
import { pressAddsUp } from './press-adds-up.ts';
import { pressLost } from './press-lost.ts';
import { readingOffSquare } from './reading-off-square.ts';
import { requireFails } from './require-fails.ts';
import { roomNotRectangular } from './room-not-rectangular.ts';
import { roomsWaitInACircle } from './rooms-wait-in-a-circle.ts';
import { roundingLeftOver } from './rounding-left-over.ts';
import type { Rule } from './rule.ts';
import { runPinchesChannel } from './run-pinches-channel.ts';
import { scheduleOffContract } from './schedule-off-contract.ts';
import { screwFindsLittle } from './screw-finds-little.ts';
import { sheetNotRipped } from './sheet-not-ripped.ts';
import { shortABoard } from './short-a-board.ts';
import { sideMissesBlocking } from './side-misses-blocking.ts';
import { signedForAnotherSum } from './signed-for-another-sum.ts';
import { slotsWontFit } from './slots-wont-fit.ts';
import { spacerHitsCleat } from './spacer-hits-cleat.ts';
import { spliceInSight } from './splice-in-sight.ts';
import { springBreaks } from './spring-breaks.ts';
import { sprinklerBehindBeam } from './sprinkler-behind-beam.ts';
import { stockOffSeason } from './stock-off-season.ts';
import { surveyStopsShort } from './survey-stops-short.ts';
import { surveyUnclear } from './survey-unclear.ts';
import { tapeDoesntClose } from './tape-doesnt-close.ts';
import { taperShows } from './taper-shows.ts';
import { thicknessMismatchAtMiter } from './thickness-mismatch-at-miter.ts';
import { tooManyCoffers } from './too-many-coffers.ts';
import { tooWideForStock } from './too-wide-for-stock.ts';
import { trimWontCover } from './trim-wont-cover.ts';
import { undersideNotFlush } from './underside-not-flush.ts';
import { unknownLine } from './unknown-line.ts';
import { unknownMeeting } from './unknown-meeting.ts';
import { wallBows } from './wall-bows.ts';
import { wallsMakeNoRoom } from './walls-make-no-room.ts';
import { wrappedHitsBottom } from './wrapped-hits-bottom.ts';

/** Every rule of the checker, by name. */
export const RULES: readonly Rule[] = [
    alarmInDraft,
    allowUnused,
    badCount,
    bandHitsCasing,
    bandHitsCeiling,
    bandTopShows,
    billedOverContract,
    bitCrept,
    blockingMissesJoist,
    blockingOffWidth,
    boardOffSize,
    bottomGapShows,
    bottomMissesRabbet,
    bottomOffSides,
    bottomWontFit,
    bottomsInUnlikePlaces,
    boxBuried,
    boxOffBlocking,
    changesOutOfOrder,
    cleatOffGauge,
    cleatOffStock,
    cleatsCrowdChannel,
    cleatsMeetInHalfBeam,
    closingPiece,
    cofferOffSize,
    commitAside,
    cutFromOtherStock,
    cutNoLongerFits,
    cutTwice,
    cutWithoutRecord,
    cutterCreeps,
    deductsOverContract,
    depositOverContract,
    depthsNearlyEqual,
    endCoffersDiffer,
    fixtureInBeam,
    fixtureOffCenter,
    fixtureOutsideRoom,
    gridDoesntClose,
    grooveLeavesNoLip,
    grooveTooHighForBottom,
    grooveWontTurn,
    groovesDontMeet,
    hangsByOneEdge,
    headroom,
    heldDownUnderHump,
    humpEatsSpacerRoom,
    jointOpens,
    jointOpensInWinter,
    joistNotThere,
    lightTooNearWood,
    lineGoesNowhere,
    linesOverlap,
    longerThanTheBoard,
    mdfEdgeFastening,
    mixedMovement,
    nailShows,
    nailWontHold,
    noCeilingThere,
    noCofferSizeFits,
    noFirstPiece,
    noRate,
    noSuchCommit,
    noSuchPiece,
    noWayIn,
    notLaidOut,
    notPositive,
    notSupportedLayout,
    notVerified,
    offcutTooShort,
    orderGoesRound,
    orderNamesNothing,
    orderOfItself,
    otherSideNowhere,
    panelNotFromItsSheet,
    panelWontOpen,
    partVanishes,
    paymentOverContract,
    phaseOverWhole,
    pieceMiscounted,
    piecesOverlap,
    pressAddsUp,
    pressLost,
    readingOffSquare,
    requireFails,
    roomNotRectangular,
    roomsWaitInACircle,
    roundingLeftOver,
    runPinchesChannel,
    scheduleOffContract,
    screwFindsLittle,
    sheetNotRipped,
    shortABoard,
    sideMissesBlocking,
    signedForAnotherSum,
    slotsWontFit,
    spacerHitsCleat,
    spliceInSight,
    springBreaks,
    sprinklerBehindBeam,
    stockOffSeason,
    surveyStopsShort,
    surveyUnclear,
    tapeDoesntClose,
    taperShows,
    thicknessMismatchAtMiter,
    tooManyCoffers,
    tooWideForStock,
    trimWontCover,
    undersideNotFlush,
    unknownLine,
    unknownMeeting,
    wallBows,
    wallsMakeNoRoom,
    wrappedHitsBottom,
];

const byName = new Map(RULES.map(rule => [rule.name, rule]));

export function ruleNamed(name: string): Rule | undefined {
    return byName.get(name);
}
