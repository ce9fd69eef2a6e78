// SPDX-License-Identifier: MIT
// A host test calls one thing after another: nothing to hold.
#pragma once

class SupervisorHold {
 public:
  SupervisorHold() {}
  ~SupervisorHold() {}
  SupervisorHold(const SupervisorHold&) = delete;
  SupervisorHold& operator=(const SupervisorHold&) = delete;
};
