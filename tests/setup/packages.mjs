// SPDX-License-Identifier: MIT
// Runs before the commands that need the npm packages: installs them when they are missing, says so on standard
// error, and is quick and silent otherwise.
import { providePackages } from './provide.mjs';

providePackages();
