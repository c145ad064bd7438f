@NullMarked
package ebblight.app.cache;

import org.jspecify.annotations.NullMarked;
