package org.holdproof.cli.page;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;

/**
 * Lets in the page itself and nobody else. Whoever asks must name this server (no name that was pointed here), know the
 * token in the address, and, where a browser says from which page it asks, ask from this one.
 */
final class Gate {
    private static final int TOKEN_BYTES = 16;

    private final String token;
    private final List<String> hosts;

    Gate(int port) {
        byte[] random = new byte[TOKEN_BYTES];
        new SecureRandom().nextBytes(random);
        token = HexFormat.of().formatHex(random);
        hosts = List.of("127.0.0.1:" + port, "localhost:" + port);
    }

    /** The path under which everything lies, with a slash at both ends. */
    String root() {
        return "/" + token + "/";
    }

    /**
     * What lies behind the token in the path of a request that may come in; empty where it may not.
     *
     * @param origin the page a browser says the request comes from; empty where it says none
     * @param site the browser's own word on where the request comes from; empty where it says none
     */
    Optional<String> admitted(String host, String path, String method, Optional<String> origin, Optional<String> site) {
        if (!hosts.contains(host)) {
            return Optional.empty();
        }
        boolean reads = method.equals("GET") || method.equals("HEAD");
        if (origin.isPresent() ? !origin.get().equals("http://" + host) : !reads) {
            return Optional.empty();
        }
        if (site.isPresent()
                && !site.get().equals("same-origin")
                && !(reads && site.get().equals("none"))) {
            return Optional.empty();
        }
        String root = root();
        if (path.length() < root.length() || !same(path.substring(0, root.length()), root)) {
            return Optional.empty();
        }
        return Optional.of(path.substring(root.length()));
    }

    /** Takes as long for a near miss as for a wide one. */
    private static boolean same(String one, String other) {
        return MessageDigest.isEqual(one.getBytes(StandardCharsets.UTF_8), other.getBytes(StandardCharsets.UTF_8));
    }
}
