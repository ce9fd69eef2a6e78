// SPDX-License-Identifier: MIT
// A host has no interrupts: nothing to lock.
#pragma once

class InterruptLock {
 public:
  InterruptLock() {}
  ~InterruptLock() {}
  InterruptLock(const InterruptLock&) = delete;
  InterruptLock& operator=(const InterruptLock&) = delete;
};
