// SPDX-License-Identifier: MIT
// How servo-end-points begins its reason where the steering gave way without meeting a stop: the diagnosis hears it.
export const noStopMet = 'No stop was met';
