namespace PileController.Records.Tests.PowerCuts;

/// <summary>A test that needs what <see cref="MountedDrive"/> needs: skipped, with the reason, where that is missing.</summary>
[AttributeUsage(AttributeTargets.Method)]
public sealed class RealPowerCutFactAttribute : FactAttribute
{
    public RealPowerCutFactAttribute() => Skip = MountedDrive.Missing();
}
