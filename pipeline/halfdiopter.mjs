#!/usr/bin/env node
// The command. It stays a plain file so that it keeps its mode and works straight after `npm ci`.
import '../dist/pipeline/cli.js';
