namespace Triage.SearchBench;

/// <summary>Ratios first, which the machine disturbs least, then times.</summary>
internal static class Report
{
    public static void Print(TextWriter to, Options options, Filling filling, Asking asking)
    {
        to.WriteLine($"{options.Notes:N0} notes, seed {options.Seed}; {Environment.ProcessorCount} processors, {Environment.OSVersion.Platform}, .NET {Environment.Version}, SQLite {asking.SqliteVersion}");
        to.WriteLine();
        to.WriteLine("ratios                                              measured   target");
        Ratio(to, "notes a second, product / Lucene alone, one thread", filling.RawOne / filling.Product, ">= 0.8");
        Ratio(to, "notes a second, product / Lucene alone, all threads", filling.RawAll / filling.Product, "");
        Ratio(to, "notes a second, product / SQLite FTS5", filling.Sqlite / filling.Product, "");
        Ratio(to, "size, product / Lucene alone", filling.ProductMegabytes / filling.RawMegabytes, "");
        Ratio(to, "size, product / SQLite FTS5", filling.ProductMegabytes / filling.SqliteMegabytes, "");
        Ratio(to, "question p50, product / SQLite FTS5", asking.Product.P50 / asking.Sqlite.P50, "");
        Ratio(to, "question p99, product / SQLite FTS5", asking.Product.P99 / asking.Sqlite.P99, "");
        to.WriteLine(filling.Differing is [] ? "same terms in every field as Lucene alone: yes" : $"same terms in every field as Lucene alone: NO, not in {string.Join(", ", filling.Differing)}");
        to.WriteLine();
        Times(to, options.Notes, filling);
        to.WriteLine();
        to.WriteLine($"{"milliseconds, the best of 3 calls",-34} {"p50",8} {"p99",8} {"(of all)",9} {"KB each",8}   SQLite {"p50",8} {"p99",8} {"(of all)",9}");
        Line(to, $"all {asking.BySort.Sum(s => s.Count)} questions (p99 target 8)", asking.Product, asking.Sqlite);
        foreach (var (sort, count, product, sqlite) in asking.BySort)
            Line(to, $"  {count} of {sort}", product, sqlite);
        Line(to, "save, until found (p99 target 100)", asking.Saves, null);
        to.WriteLine($"{asking.WithoutHits} questions found nothing; {asking.SavedNotFound} saves were not found");
    }

    private static void Times(TextWriter to, int notes, Filling filling)
    {
        to.WriteLine($"{"filling",-34} {"seconds",8} {"notes/s",9} {"MB",7}");
        Fill("product, from notes", filling.Product, filling.ProductMegabytes);
        Fill("  of which choosing words, alone", filling.Words, null);
        Fill("Lucene alone, one thread", filling.RawOne, filling.RawMegabytes);
        Fill("Lucene alone, all threads", filling.RawAll, null);
        Fill("SQLite FTS5", filling.Sqlite, filling.SqliteMegabytes);

        void Fill(string what, double seconds, double? megabytes) => to.WriteLine($"{what,-34} {seconds,8:F1} {notes / seconds,9:N0} {megabytes,7:F0}");
    }

    private static void Ratio(TextWriter to, string what, double ratio, string target) => to.WriteLine($"{what,-51} {ratio,8:F2}   {target}");

    private static void Line(TextWriter to, string what, Timed product, Timed? sqlite) =>
        to.WriteLine($"{what,-34} {product.P50,8:F2} {product.P99,8:F2} {product.P99OfAll,9:F2} {product.Kilobytes,8:F0}          {sqlite?.P50,8:F2} {sqlite?.P99,8:F2} {sqlite?.P99OfAll,9:F2}".TrimEnd());
}
