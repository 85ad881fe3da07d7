package org.holdproof.core.standing;

import java.util.Optional;
import org.holdproof.core.rules.Citation;

/**
 * What a document allows to be done about a check that is not met.
 *
 * @param check the check's id
 * @param text what it allows, in our words or the tables'
 * @param citation where it stands; empty where no document held here says anything
 * @param clock the limit still running; empty where none runs
 */
public record Remedy(String check, String text, Optional<Citation> citation, Optional<RunningClock> clock) {}
