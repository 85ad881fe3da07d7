package org.holdproof.core.rules;

/** One published row or requirement: what it is called, what it is about, and where it stands. */
public interface Rule {
    /** The id other tables, profiles and records name it by; unique within its {@link RuleSet}. */
    String id();

    /** What it is about, in a few words. */
    String title();

    /** Where it stands, and how its figures were obtained. */
    Citation citation();
}
