#!/bin/sh
# The manual's job array on a real Slurm of one node, which this script begins and ends: the parts together have to be the bytes
# of one build. For root. SETWRIGHT is the program, SETWRIGHT_SRC the tree; all that Slurm writes lies in a folder that goes away.
set -eu
here=$(mktemp -d)
host=$(hostname -s)
SLURM_CONF=$here/slurm.conf
export SLURM_CONF
trap 'kill $(cat "$here"/*.pid) 2> /dev/null; rm -rf "$here"' EXIT
mkdir "$here/state" "$here/spool" "$here/work" "$here/bin"
cat > "$SLURM_CONF" <<CONF
ClusterName=weir
SlurmctldHost=$host(127.0.0.1)
SlurmUser=root
AuthType=auth/munge
AuthInfo=socket=$here/munge.socket
ProctrackType=proctrack/linuxproc
TaskPlugin=task/none
JobAcctGatherType=jobacct_gather/none
AccountingStorageType=accounting_storage/none
SelectType=select/cons_tres
SelectTypeParameters=CR_Core
MpiDefault=none
StateSaveLocation=$here/state
SlurmdSpoolDir=$here/spool
SlurmctldPidFile=$here/slurmctld.pid
SlurmdPidFile=$here/slurmd.pid
SlurmctldLogFile=$here/slurmctld.log
SlurmdLogFile=$here/slurmd.log
NodeName=$host NodeAddr=127.0.0.1 CPUs=$(nproc) State=UNKNOWN
PartitionName=hall Nodes=$host Default=YES MaxTime=INFINITE State=UP
CONF

ended() { # WHAT: says why nothing came of it
    echo "slurm.sh: $1" >&2
    tail -n 5 "$here"/*.log >&2
    exit 1
}

dd if=/dev/urandom of="$here/munge.key" bs=128 count=1 2> /dev/null
chmod 600 "$here/munge.key"
chmod 755 "$here"
munged --force --key-file "$here/munge.key" --socket "$here/munge.socket" --pid-file "$here/munged.pid" \
    --log-file "$here/munged.log" --seed-file "$here/munge.seed" || ended 'munged does not start'
slurmctld || ended 'slurmctld does not start'
slurmd || ended 'slurmd does not start'

cp "$SETWRIGHT" "$here/bin/setwright"
cp -r "$SETWRIGHT_SRC/examples" "$here/work/club"
cd "$here/work"
/usr/bin/python3 - "$SETWRIGHT_SRC/grammar/LANGUAGE.md" > job.sh <<'PY'
import re
import sys
print(next(fence for fence in re.findall(r'```sh\n(.*?)```', open(sys.argv[1], encoding='utf-8').read(), re.S) if 'SBATCH' in fence), end='')
PY
PATH=$here/bin:$PATH sbatch --wait --array=1-4 job.sh || ended 'the job array failed'
"$here/bin/setwright" build --format csv club/ > whole.csv
cat part-*.csv | cmp - whole.csv || ended 'the parts are not the whole'
echo "the job array of the manual: 4 parts, $(wc -l < whole.csv) rows, the bytes of one build"
