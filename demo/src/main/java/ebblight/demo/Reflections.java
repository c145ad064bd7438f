package ebblight.demo;

import java.util.ArrayList;
import java.util.List;

/** What stands in the sea and shows in it upside down: the posts and the arch, dark against the mirrored sky. */
final class Reflections {

    private static final float[] POST = {0.055f, 0.050f, 0.048f};
    private static final float[] ARCH = {0.085f, 0.078f, 0.080f};
    /** Sideways slope of the water that the search for mirrored things allows for. */
    private static final double SIDEWAYS = 0.22;

    private final Lens lens;
    /** By row under the horizon: post, first and last column (exclusive) in turn. */
    private final int[][] posts;

    private final int firstRow;

    Reflections(Lens lens, int firstRow) {
        this.lens = lens;
        this.firstRow = firstRow;
        this.posts = new int[lens.height() - firstRow][];
        for (int i = 0; i < posts.length; i++) {
            posts[i] = spans(-lens.up(firstRow + i + 0.5));
        }
    }

    private int[] spans(double down) {
        if (down <= 0) {
            return new int[0];
        }
        double ahead = Lens.HEIGHT_METRES / down;
        List<Integer> found = new ArrayList<>();
        for (int p = 0; p < Pier.POSTS.size(); p++) {
            Pier.Post post = Pier.POSTS.get(p);
            double gap = post.ahead() - ahead;
            // still water mirrors at the slope of the view; waves reach about twice that
            if (gap > 0 && gap * down < 3 * post.top()) {
                double reach = post.radius() + 0.15 + SIDEWAYS * gap * Math.min(1, 3 * down);
                int from = (int) Math.floor(lens.x((post.x() - reach) / post.ahead()));
                int to = (int) Math.ceil(lens.x((post.x() + reach) / post.ahead()));
                if (from < lens.width() && to > 0) {
                    found.add(p);
                    found.add(Math.max(0, from));
                    found.add(Math.min(lens.width(), to));
                }
            }
        }
        return found.stream().mapToInt(Integer::intValue).toArray();
    }

    /** Darkens the mirrored light of row {@code y} where the sky is hidden by what stands in front of it. */
    void shade(int y, double ahead, WaterRow row) {
        int[] spans = posts[y - firstRow];
        for (int s = 0; s < spans.length; s += 3) {
            Pier.Post post = Pier.POSTS.get(spans[s]);
            for (int x = spans[s + 1]; x < spans[s + 2]; x++) {
                float across = row.across[x];
                float rx = row.right[x];
                float rz = row.up[x];
                float ry = (float) Math.sqrt(Math.max(1e-4f, 1 - rx * rx - rz * rz));
                float run = (float) (post.ahead() - ahead) / ry;
                float z = rz * run;
                float off = across + rx * run - (float) (post.x() + post.lean() * z);
                float soft = 0.03f + row.blur[x] * 0.35f * run;
                float radius = (float) post.radius();
                float wide = clamp((radius + soft - Math.abs(off)) / (2 * soft));
                float tall = clamp((float) (post.top() - z) / (0.1f + 2 * soft) + 0.5f);
                // a thin post cannot hide more of a blurred sky than its own width
                darken(row, x, POST, wide * tall * Math.min(1, 1.1f * radius / soft));
            }
        }
        if (ahead < StoneArch.AHEAD_METRES) {
            shadeArch(ahead, row);
        }
    }

    private void shadeArch(double ahead, WaterRow row) {
        double gap = StoneArch.AHEAD_METRES - ahead;
        int to = (int) Math.min(lens.width(), lens.x((StoneArch.TO_X + 8) / StoneArch.AHEAD_METRES));
        for (int x = 0; x < to; x++) {
            float rx = row.right[x];
            float rz = row.up[x];
            float ry = (float) Math.sqrt(Math.max(1e-4f, 1 - rx * rx - rz * rz));
            float run = (float) gap / ry;
            float z = rz * run;
            float px = row.across[x] + rx * run;
            float soft = 0.3f + row.blur[x] * 0.5f * run;
            float tall = clamp((float) (StoneArch.TOP_METRES - 2 - z) / (2 * soft) + 0.5f);
            float body = between(px, (float) StoneArch.FROM_X, (float) StoneArch.TO_X, soft) * tall;
            if (body <= 0) {
                continue;
            }
            float half = (float) StoneArch.DOOR_HALF_METRES;
            float door = between(px, (float) StoneArch.DOOR_X - half, (float) StoneArch.DOOR_X + half, soft)
                    * clamp((float) (StoneArch.DOOR_TOP_METRES - 0.5 - z) / (2 * soft) + 0.5f);
            darken(row, x, ARCH, body * (1 - door));
        }
    }

    private static float between(float x, float from, float to, float soft) {
        return clamp((x - from) / (2 * soft) + 0.5f) * clamp((to - x) / (2 * soft) + 0.5f);
    }

    private static void darken(WaterRow row, int x, float[] colour, float share) {
        for (int c = 0; c < 3; c++) {
            row.seen[3 * x + c] += share * (colour[c] - row.seen[3 * x + c]);
        }
    }

    private static float clamp(float x) {
        return Math.max(0, Math.min(1, x));
    }
}
