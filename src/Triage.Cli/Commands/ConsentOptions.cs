using System.CommandLine;
using Triage.Cli.Typed;
using Triage.Notes.Kinds;

namespace Triage.Cli.Commands;

/// <summary>What the owner agrees to, as options.</summary>
internal sealed class ConsentOptions
{
    private readonly Option<double?> spend = Inputs.Number("--spend", "Most that the owner will pay.");
    private readonly Option<bool?> mayErase = Inputs.Either("--may-erase", "yes", "no", "May stored data be erased?");
    private readonly Option<bool?> originalsBack = Inputs.Either("--originals-back", "yes", "no", "Are old parts wanted back?");

    public IEnumerable<Option> All => [spend, mayErase, originalsBack];

    public bool Given(Session session) => session.Get(spend) is not null || session.Get(mayErase) is not null || session.Get(originalsBack) is not null;

    /// <summary>What was said before, changed by what is said now.</summary>
    public Consent Over(Consent before, Session session) =>
        new(session.Get(spend) ?? before.SpendingLimit, session.Get(mayErase) ?? before.MayErase, session.Get(originalsBack) ?? before.OriginalsBack);
}
