/** An invented kitchen with simulated cooks, to try everything on. */
@NullMarked
package org.holdproof.cli.demo;

import org.jspecify.annotations.NullMarked;
