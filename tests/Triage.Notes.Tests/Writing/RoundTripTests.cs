using System.Collections.Immutable;
using System.Text;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Triage.Notes.Kinds;
using Triage.Notes.Parsing;
using Triage.Notes.Writing;

namespace Triage.Notes.Tests.Writing;

/// <summary>Reading what was written gives the same record.</summary>
public sealed class RoundTripTests
{
    public static TheoryData<string> Examples => [.. FormatPageTests.ExamplesOfPage()];

    [Theory]
    [MemberData(nameof(Examples))]
    public void ExamplesOfTheFormatPage(string example) => AssertSame(Read(example));

    [Property(Arbitrary = [typeof(Records)], MaxTest = 500)]
    public void Jobs(Job job) => AssertSame(job);

    [Property(Arbitrary = [typeof(Records)], MaxTest = 500)]
    public void Faults(Fault fault) => AssertSame(fault);

    [Property(Arbitrary = [typeof(Records)], MaxTest = 300)]
    public void Classes(DeviceClass machines) => AssertSame(machines);

    [Property(Arbitrary = [typeof(Records)], MaxTest = 300)]
    public void Tests(Test test) => AssertSame(test);

    private static void AssertSame(Note note)
    {
        var written = NoteWriter.New(note);

        var again = Read(written) with { References = note.References, Place = note.Place };

        Assert.Equivalent(note, again, strict: true);
        Assert.Equal(written, NoteWriter.New(again));
    }

    private static Note Read(string content)
    {
        var reading = NoteReader.Read("b", "n.md", Encoding.UTF8.GetBytes(content));
        Assert.True(reading.Problems.IsEmpty, $"{string.Join('\n', reading.Problems)}\n{content}");
        return reading.Note!;
    }
}

/// <summary>Generates jobs and faults whose texts are the ones that YAML likes to misread.</summary>
public static class Records
{
    private static readonly string[] Awkward =
    [
        "yes", "No", "on", "~", "null", "12:30", "1e3", "0x1F", "1_000", "-", "- a", "a: b", "a #b", "#a", "a:", "*a", "&a", "!a", "%a", "@a", "`a",
        "{a", "a}", "[a]", "a, b", "'a'", "\"a\"", "a\\b", "two\nlines", "\ttab", " led", "trailed ", "12 R", "4n7", "1,2 k", "-5 V", "µF μF", "?", ">", "|",
        "2024-03-02", "\u0085", "\u2028", "\uFEFFx", "---", "...", "=", "<<", "", "Gerät", "表示なし", "🔧", ".5", "+1", "C14 + to −, ohms: 12 R",
    ];

    private static readonly Gen<string> Text = Gen.OneOf(Gen.Elements(Awkward), ArbMap.Default.GeneratorFor<NonNull<string>>().Select(s => Encodable(s.Get)));

    private static readonly Gen<string> Id = Gen.Elements("display", "backup-capacitor", "c-14", "2024-017", "1e3", "no");

    private static readonly Gen<double> Amount = Gen.Elements(0, 1, 2.5, 1e-7, 1234567.25, 1e9);

    private static readonly Gen<Chance> Chance =
        from word in Gen.OneOf(Gen.Elements<string?>([.. FrequencyWords.Table.Keys]), Gen.Constant<string?>(null))
        from p in Gen.Elements(0, 1, 0.25, 1e-9)
        from weight in Gen.Elements(3, 6, 0.5, double.PositiveInfinity)
        from source in Maybe(Text)
        select new Chance(word is null ? p : FrequencyWords.Table[word], weight, word, source);

    private static readonly Gen<DateTimeOffset> Date =
        from minutes in Gen.Choose(0, 20_000_000)
        from ticks in Gen.Elements(0, 1, 5_000_000)
        from offset in Gen.Elements(0, 60, -570)
        select new DateTimeOffset(1990, 1, 1, 0, 0, 0, TimeSpan.FromMinutes(offset)).AddMinutes(minutes).AddTicks(ticks);

    public static Arbitrary<Job> Job() =>
        (from id in Id
         from name in Text.Where(t => t.Length > 0)
         from texts in Gen.ArrayOf(Text)
         from opened in MaybeValue(Date)
         from owner in Maybe(Text)
         from spend in MaybeValue(Amount)
         from asked in MaybeValue(Flag)
         from log in Gen.ArrayOf(Entry)
         from cause in Cause
         from outcome in MaybeValue(Gen.Elements(Enum.GetValues<JobOutcome>()))
         from waits in Maybe(from what in Text from until in MaybeValue(Date) select new Waiting(what, until))
         from heard in Gen.ArrayOf(from date in Date from back in Flag from note in Maybe(Text) select new FollowUp(date, back, note))
         from build in Build
         from body in Gen.Elements("", "\n# Head\n\ntext --- [a](note:b)\n")
         select new Job(id, name)
         {
             Device = "k-61",
             Also = [.. texts],
             Complaint = texts.FirstOrDefault(""),
             History = [.. texts],
             Opened = opened,
             Owner = owner,
             Consent = new Consent(spend, asked, null),
             Log = [.. log],
             Causes = [cause],
             Outcome = outcome,
             WaitsFor = waits,
             FollowUps = [.. heard],
             Worth = spend,
             Build = build,
             NoOwner = asked ?? false,
             Generated = asked ?? false,
             Body = body,
         }).ToArbitrary();

    public static Arbitrary<Fault> Fault() =>
        (from id in Id
         from name in Text.Where(t => t.Length > 0)
         from part in Maybe(Id)
         from share in Maybe(Chance)
         from shows in Gen.ArrayOf(from finding in Id from value in Maybe(Id) from chance in Chance from when in Gen.ArrayOf(Text) from every in MaybeValue(Amount.Where(a => a > 0))
                                   select new Shows(finding, value, chance) { When = [.. when], EveryMinutes = every })
         from leads in Gen.ArrayOf(from fault in Id from chance in Chance select new LeadsTo(fault, chance))
         from mends in Gen.ArrayOf(Mend)
         from given in Gen.ArrayOf(from present in Gen.ArrayOf(Id) select new GivenRow([.. present], 0.25))
         from nothing in Flag
         select new Fault(id, name)
         {
             Part = part,
             Mode = part is null ? null : "open",
             Share = share,
             Shows = [.. shows],
             LeadsTo = [.. leads],
             Mends = [.. mends],
             Given = [.. given],
             NothingWrong = nothing,
         }).ToArbitrary();

    public static Arbitrary<DeviceClass> DeviceClass() =>
        (from id in Id
         from name in Text.Where(t => t.Length > 0)
         from texts in Gen.ArrayOf(Text)
         from share in Maybe(Chance)
         from several in Flag
         from condition in Condition
         from power in Gen.Elements(Enum.GetValues<PowerStage>())
         from effort in Effort
         from say in Text
         from proof in Gen.ArrayOf(Proof)
         select new DeviceClass(id, name)
         {
             Builds = [new Trait("supply", say) { Several = several, Values = [new("cells", say, share) { Says = [.. texts] }, new("mains", name, null)] }],
             Roles = [new("power-entry", say, id, id) { Build = condition }],
             Cautions = [new Caution(Hazard.PictureTube, say) { Reach = id, Power = power, Build = condition }],
             StopAtOnce = [new(say), new(say) { Build = condition }],
             Counter = ["display"],
             Protect =
             [
                 new("copy", say)
                 {
                     Steps = [.. texts],
                     Effort = effort,
                     Loses = say,
                     When = [new Noticed("display", null), new Noticed("display", say), new Feared(id, 0.25)],
                     Build = condition,
                 },
             ],
             LimitedPower = ["lamp"],
             Access = [new("lid", say, 2.5, null) { Build = condition }],
             Proof = [.. proof],
             Exchange = several ? new Exchange { Effort = effort, Build = condition } : null,
             NotCovered = [.. texts],
         }).ToArbitrary();

    public static Arbitrary<Test> Test() =>
        (from id in Id
         from name in Text.Where(t => t.Length > 0)
         from decides in Flag
         from one in Flag
         from chance in Chance
         from effort in Effort
         from condition in Condition
         select new Test(id, name)
         {
             Reveals = !decides && one ? "display" : null,
             Round = decides || one ? [] : ["no", "display", "12:30"],
             Decides = decides ? id : null,
             Outcomes = decides ? [new("high", name, ImmutableDictionary<string, Chance>.Empty.Add("present", chance).Add("absent", chance))] : [],
             Effort = effort,
             Build = condition,
         }).ToArbitrary();

    private static Gen<ImmutableArray<TraitValues>> Traits =>
        from traits in Gen.SubListOf("supply", "no", "12:30")
        from values in Gen.NonEmptyListOf(Id)
        select traits.Select(t => new TraitValues(t, [.. values])).ToImmutableArray();

    private static Gen<Build> Build => Traits.Select(t => new Build(t));

    private static Gen<BuildCondition?> Condition => Traits.Select(t => t.IsEmpty ? null : new BuildCondition(t));

    private static Gen<Effort> Effort =>
        from minutes in Amount
        from wait in Amount
        from access in Maybe(Id)
        select new Effort { Minutes = minutes, WaitMinutes = wait, Access = access };

    private static Gen<ProofStep> Proof =>
        from say in Text
        from effort in Gen.OneOf(Effort, Gen.Constant(new Effort()))
        from condition in Condition
        select new ProofStep(say) { Effort = effort, Build = condition };

    private static Gen<bool> Flag => Gen.Elements(true, false);

    private static Gen<Mend> Mend =>
        from id in Id
        from name in Maybe(Text)
        from works in Chance
        from minutes in Amount
        from steps in Gen.ArrayOf(Text)
        from power in Gen.Elements(Enum.GetValues<PowerStage>())
        from hazard in Gen.Elements(Enum.GetValues<Hazard>())
        from say in Maybe(Text)
        from handOver in Flag
        from harm in Maybe(Chance)
        from proof in Gen.ArrayOf(Proof)
        from condition in Condition
        select new Mend(id, name, works)
        {
            Effort = new Effort
            {
                Minutes = minutes,
                Power = power,
                Tools = [.. steps],
                Cautions = [StandardCautions.Of(hazard), new Caution(hazard, say ?? StandardCautions.Of(hazard).Say) { HandOver = handOver }],
                HarmChance = harm,
                HarmPrice = harm is null ? 0 : minutes,
            },
            Swap = handOver,
            TakesOut = handOver,
            Proof = [.. proof],
            Build = condition,
            Steps = [.. steps],
        };

    private static Gen<FoundCause> Cause =>
        from fault in Id
        from grade in Gen.Elements(Enum.GetValues<Grade>())
        from chance in Gen.Elements(1, 0.5)
        from isNew in Flag
        select new FoundCause(fault, grade, chance, isNew);

    private static Gen<LogEntry> Entry =>
        from entry in Gen.OneOf(Said(), Done())
        from note in Maybe(Text)
        from photos in Gen.ArrayOf(Gen.Elements("photos/a.jpg", "yes.png"))
        select entry with { Note = note, Photos = [.. photos] };

    private static Gen<LogEntry> Said() =>
        from at in Date
        from id in Id
        from a in Text
        from b in Maybe(Text)
        from n in MaybeValue(Amount)
        from flag in Flag
        from state in Gen.Elements(Enum.GetValues<PartState>())
        from entry in Gen.Elements<LogEntry>(
            new Saw(at, id, "yes") { When = [a], WatchedMinutes = n, Words = b },
            new Tested(at, id, a),
            new Read(at, a) { From = b, To = a, Mode = b, Value = a, Power = b, Load = a, Instrument = b },
            new QuickLine(at, a),
            new TakenOff(at, a, b, flag),
            new Secured(at, id, flag),
            new Skipped(at, a, flag ? SkipReason.Skip : SkipReason.CannotTell),
            new RoundDone(at, id),
            new CounterClosed(at),
            new PartMoved(at, a, state) { Price = n, Shipping = n, LeadDays = n, From = b, DateCode = a })
        select entry;

    private static Gen<LogEntry> Done() =>
        from at in Date
        from id in Id
        from a in Text
        from b in Maybe(Text)
        from flag in Flag
        from maybe in MaybeValue(Flag)
        from effect in Gen.Elements(Enum.GetValues<Effect>())
        from power in Gen.Elements(Enum.GetValues<PowerStage>())
        from entry in Gen.Elements<LogEntry>(
            new ResetTried(at, id, effect),
            new Fixed(at, id, effect) { TestedBefore = maybe },
            new Swapped(at, a, flag ? id : null, effect, maybe),
            new Held(at, id, flag, b),
            new Opened(at, id, flag),
            new Powered(at, power, b))
        select entry;

    private static Gen<T?> Maybe<T>(Gen<T> gen)
        where T : class => Gen.OneOf(gen.Select(v => (T?)v), Gen.Constant<T?>(null));

    private static Gen<T?> MaybeValue<T>(Gen<T> gen)
        where T : struct => Gen.OneOf(gen.Select(v => (T?)v), Gen.Constant<T?>(null));

    /// <summary>Half a surrogate pair has no UTF-8.</summary>
    private static string Encodable(string text) => string.Concat(text.EnumerateRunes());
}
