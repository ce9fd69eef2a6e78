// SPDX-License-Identifier: MIT
// Wiring: one rig, one link, and a main loop that moves bytes and sleeps whenever nothing is to be done.
#include <avr/interrupt.h>
#include <avr/sleep.h>

#include "board.h"
#include "platform.h"

Rig rig;

namespace {
void begin() {
  board::beginPins();
  rig.store.open();
  board::beginLine();
  board::beginTimer1();
  board::beginConverter();
  board::beginSupervisor();
  rig.start(board::resetCause(), tickNow());
  board::beginWatchdog();
  sei();
}

void work(HostLink& link) {
  while (!link.commandWaits() && !board::nothingReceived()) link.take(board::receive());
  if (!link.sending()) link.prepare();
  while (link.sending() && board::sendRoom() > 0) board::send(link.next());
}

/** Checked with interrupts out; the sleep instruction right after sei() runs before any interrupt does. */
void rest(const HostLink& link) {
  cli();
  const bool deaf = link.commandWaits() || board::nothingReceived();
  const bool mute = board::sendRoom() == 0 || (!link.sending() && !link.hasMore());
  if (deaf && mute) {
    sleep_enable();
    sei();
    sleep_cpu();
    sleep_disable();
  }
  sei();
}
}  // namespace

int main() {
  begin();
  HostLink link(rig, board::resetCause());
  set_sleep_mode(SLEEP_MODE_IDLE);
  for (;;) {
    const Tick start = tickNow();
    board::mainIsAlive();
    work(link);
    link.turnTook(tickNow() - start);
    rest(link);
  }
}
