using HomeLine.Agency.Reports;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace HomeLine.Agency.Storage.Mapping;

internal sealed class ReportMapping : IEntityTypeConfiguration<FiledReport>
{
    public void Configure(EntityTypeBuilder<FiledReport> builder)
    {
        builder.NumberedRows("problem_reports").Changeable();
        builder.HasAlternateKey(r => r.Id);
        builder.Property(r => r.Report).AsJson();
        builder.Property(r => r.Result).AsJson();
        builder.OfPatient(r => r.Patient);
        builder.OnLine(r => r.Line);
    }
}
