using System.Collections.Immutable;
using Triage.Notes.Kinds;

namespace Triage.Workshop.Steps;

/// <summary>A test that no note lists yet.</summary>
/// <param name="Reveals">Finding id.</param>
/// <param name="Minutes">At the bench.</param>
/// <param name="Power">What it puts on the unit.</param>
/// <param name="Caution">Said before its steps; null for none.</param>
public sealed record NewTest(string Name, TestWay Way, string Reveals, double Minutes, PowerStage Power, string? Caution, ImmutableArray<string> Steps);
