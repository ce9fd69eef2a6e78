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

/** Bytes go to the ring by the handful: waking for each one would cost more than sending it. */
constexpr uint8_t kHandful = 32;

void work(HostLink& link) {
  while (!link.commandWaits() && !board::nothingReceived()) link.take(board::receive());
  if (!link.sending()) link.prepare();
  uint8_t room = board::sendRoom();
  for (; link.sending() && room > 0; --room) board::put(link.next());
  board::startSending();
}

inline bool idle(const HostLink& link) {
  if (!link.commandWaits() && !board::nothingReceived()) return false;
  return board::sendRoom() < kHandful || (!link.sending() && !link.hasMore());
}

/** Looked at with interrupts out; the sleep instruction right after sei() runs before any interrupt does. */
void rest(const HostLink& link) {
  sleep_enable();
  cli();
  while (idle(link)) {
    board::mainIsAlive();
    sei();
    sleep_cpu();
    cli();
  }
  sei();
  sleep_disable();
}
}  // namespace

int main() {
  begin();
  static HostLink link(rig, board::resetCause());
  set_sleep_mode(SLEEP_MODE_IDLE);
  for (;;) {
    const Tick start = tickNow();
    board::mainIsAlive();
    work(link);
    link.turnTook(tickNow() - start);
    rest(link);
  }
}
