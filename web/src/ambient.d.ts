// SPDX-License-Identifier: MIT
// What the bundler adds to the language: components, style sheets, worker addresses.
/// <reference types="svelte" />
/// <reference types="vite/client" />
