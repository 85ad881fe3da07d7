package org.holdproof.report.layout;

/** What every output a person may act on says. */
public final class SafetyWords {
    public static final String TEXT =
            "Decision support. The local authority's code and the approved HACCP plan govern. "
                    + "NOT PROVEN and NOT MET food is not served on this tool's word.";

    private SafetyWords() {}
}
