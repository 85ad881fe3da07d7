package org.holdproof.cli;

import picocli.CommandLine.IVersionProvider;

/** The version as the jar's manifest names it. */
public final class Version implements IVersionProvider {
    @Override
    public String[] getVersion() {
        String built = Version.class.getPackage().getImplementationVersion();
        return new String[] {"holdproof " + (built == null ? "(not from a jar)" : built)};
    }
}
